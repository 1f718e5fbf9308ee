#include "fix.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string_view>

namespace ohmtrail::diagnose {
namespace {

using netlist::Seen;
using trade::JointKind;
using trade::Observation;

/// What one observation on one kind of fault asks for.
struct Remedy {
  Cause cause;
  Observation seen;
  std::string_view action;
};

/// The first row whose observation was made decides: what cannot be mended stands before what can be cleaned.
constexpr std::array remedies = {
    Remedy{Cause::bad_termination, Observation::melted,
           "It has melted: cut back to bright copper, crimp on a new lug and replace the stud's hardware"},
    Remedy{Cause::bad_termination, Observation::broken_strands,
           "Strands are broken: cut back to whole strands, crimp on a new lug and relieve the strain"},
    Remedy{Cause::bad_termination, Observation::washer_under_lug,
           "Take the washer from under the lug: lug on the bare stud, then washer, then lock nut, tightened "
           "to its torque"},
    Remedy{Cause::bad_termination, Observation::wing_nut,
           "Replace the wing nut by a lock nut and tighten it to its torque"},
    Remedy{Cause::bad_termination, Observation::loose_nut,
           "It is loose: clean lug and stud, tighten the nut to its torque"},
    Remedy{Cause::bad_termination, Observation::turns_by_hand,
           "It is loose: clean lug and stud, tighten the nut to its torque"},
    Remedy{Cause::bad_termination, Observation::moves_reading,
           "It is loose or has broken strands: tighten the nut to its torque; if the reading still jumps "
           "when flexed, crimp on a new lug"},
    Remedy{Cause::bad_termination, Observation::green_corrosion,
           "It is corroded: cut back to bright copper and crimp on a new tinned lug"},
    Remedy{Cause::bad_termination, Observation::white_corrosion,
           "It is corroded: cut back to bright copper and crimp on a new tinned lug"},
    Remedy{Cause::bad_termination, Observation::bulging_jacket,
           "It is corroded under the jacket: cut back to bright copper and crimp on a new tinned lug"},
    Remedy{Cause::bad_termination, Observation::shrunken_jacket,
           "It has run hot: cut back to bright copper and crimp on a new tinned lug"},
    Remedy{Cause::bad_termination, Observation::darkened,
           "It has run hot: cut back to bright copper and crimp on a new tinned lug"},

    Remedy{Cause::bad_joint, Observation::melted, "It has melted: replace it, and the lugs on it"},
    Remedy{Cause::bad_joint, Observation::washer_under_lug,
           "Take the washer out of the current's way: metal on bare metal, then washer, then lock nut, "
           "tightened to its torque"},
    Remedy{Cause::bad_joint, Observation::wing_nut,
           "Replace the wing nut by a lock nut and tighten it to its torque"},
    Remedy{Cause::bad_joint, Observation::loose_nut,
           "It is loose: clean it to bright metal and tighten it to its torque"},
    Remedy{Cause::bad_joint, Observation::turns_by_hand,
           "It is loose: clean it to bright metal and tighten it to its torque"},
    Remedy{Cause::bad_joint, Observation::moves_reading,
           "It is loose: clean it to bright metal and tighten it to its torque"},
    Remedy{Cause::bad_joint, Observation::green_corrosion,
           "It is corroded: take it apart, clean it to bright metal, tighten and seal it"},
    Remedy{Cause::bad_joint, Observation::white_corrosion,
           "It is corroded: take it apart, wash it with soda and water, clean it to bright metal, tighten "
           "and seal it"},
    Remedy{Cause::bad_joint, Observation::darkened, "It has run hot: replace it"},

    Remedy{Cause::worn_contact, Observation::melted,
           "It has melted: replace it by one of at least its rating"},
    Remedy{Cause::worn_contact, Observation::pitted,
           "Its contacts are pitted: replace it by one of at least its rating"},
    Remedy{Cause::worn_contact, Observation::loose_nut,
           "Its terminal is loose: tighten the nut to its torque and measure again"},
    Remedy{Cause::worn_contact, Observation::turns_by_hand,
           "Its terminal is loose: tighten the nut to its torque and measure again"},
    Remedy{Cause::worn_contact, Observation::darkened,
           "It has run hot: replace it by one of at least its rating"},

    Remedy{Cause::corroded_conductor, Observation::melted,
           "The cable has melted: replace it, and find out what it carried"},
    Remedy{Cause::corroded_conductor, Observation::broken_strands,
           "Strands are broken: replace the cable and relieve the strain"},
    Remedy{Cause::corroded_conductor, Observation::moves_reading,
           "Strands are broken: replace the cable and relieve the strain"},
    Remedy{Cause::corroded_conductor, Observation::bulging_jacket,
           "The copper is corroded under the jacket: replace the cable by tinned cable with sealed lugs"},
    Remedy{Cause::corroded_conductor, Observation::green_corrosion,
           "The copper is corroded: replace the cable by tinned cable with sealed lugs"},
    Remedy{Cause::corroded_conductor, Observation::white_corrosion,
           "The conductor is corroded: replace the cable by tinned cable with sealed lugs"},
    Remedy{Cause::corroded_conductor, Observation::shrunken_jacket,
           "The cable has run hot: replace it, and find out what it carried"},
    Remedy{Cause::corroded_conductor, Observation::darkened,
           "The cable has run hot: replace it, and find out what it carried"},
};

bool made(const Seen& seen, Observation what) {
  return std::find(seen.begin(), seen.end(), what) != seen.end();
}

std::string_view remedy_by_eye(Cause cause, const Seen& seen) {
  const auto row = std::find_if(remedies.begin(), remedies.end(), [&](const Remedy& remedy) {
    return remedy.cause == cause && made(seen, remedy.seen);
  });
  return row == remedies.end() ? std::string_view{} : row->action;
}

std::string_view unseen_joint(JointKind kind) {
  switch (kind) {
    case JointKind::post_clamp:
      return "Clean post and clamp to bright lead and tighten the clamp, negative off first and on last";
    case JointKind::stud:
      return "Take the stack apart, clean every face to bright metal, tighten the nut to its torque";
    case JointKind::splice:
      return "Cut the splice out and crimp in a new, sealed one";
    case JointKind::plug:
      return "Clean pins and sockets; replace the plug if it stays high";
    case JointKind::terminal_strip:
      return "Clean the wire ends, fit ferrules, tighten the screws";
    case JointKind::fuse_clip:
      return "Clean the clip and bend it tight; replace the holder if it stays high";
    case JointKind::bus_bar:
      return "Take the lugs off, clean bar and lugs to bright metal, tighten the screws";
    case JointKind::chassis:
      return "Clean the chassis to bare metal under the lug, bolt it tight and seal it, or run a return "
             "cable";
  }
  return "";
}

std::string_view unseen_contact(const FixContext& context) {
  if (context.element.role == network::Role::fuse)
    return "Clean and tighten the fuse's contacts; if it stays high, fit a new fuse or holder of the same "
           "rating";
  switch (context.system.switches[context.element.origin.index].kind) {
    case trade::SwitchKind::battery_switch:
    case trade::SwitchKind::toggle:
      return "Work it a dozen times with the loads off and measure again; if it stays high, replace it";
    case trade::SwitchKind::breaker:
      return "Replace the breaker by one of the same rating and interrupting capacity";
    case trade::SwitchKind::contactor:
      return "Clean its studs and measure again; if it stays high, replace the contactor";
  }
  return "";
}

std::string_view unseen(Cause cause, const FixContext& context) {
  switch (cause) {
    case Cause::bad_termination:
      return "Undo it, clean lug and stud to bright metal, tighten the nut to its torque; if it stays high, "
             "crimp on a new lug";
    case Cause::bad_joint:
      return unseen_joint(context.system.joints[context.element.origin.index].kind);
    case Cause::worn_contact:
      return unseen_contact(context);
    case Cause::corroded_conductor:
      return "Verify gauge, length and metal; if they are as written, replace the cable";
    default:
      return "";
  }
}

bool must_not_be_charged(const Seen& seen) {
  return made(seen, Observation::frozen) || made(seen, Observation::bulged_case) ||
         made(seen, Observation::melted);
}

/// Failed at twice the sound resistance: 6/CCA where 3/CCA is sound (common practice).
constexpr double failed_over_sound = 2;

constexpr std::string_view keep_off_it =
    "Do not charge or test it: it can burst. Keep flames away and replace the battery.";

/// What the battery's own checks ask for; empty: nothing that a charge and a test would not do.
std::string_view fix_by_own_tests(std::optional<BatteryState> state) {
  if (!state) return "";
  switch (*state) {
    case BatteryState::dry_plates:
      return "Do not charge or load it: its plates stood dry. Replace it and find out what boiled it dry.";
    case BatteryState::do_not_test:
      return keep_off_it;
    case BatteryState::exposed_plates:
      return "Ventilate, keep flames away. Pour in distilled water until the plates are just covered, never "
             "acid; charge it fully and test again.";
    case BatteryState::weak_cell:
      return "One cell is dead or weak. Ventilate, keep flames away, charge it once and read the cells "
             "again; then replace the battery.";
    case BatteryState::sulphated_or_worn:
      return "It fails under load though charged: replace the battery, unless a cell, the acid level or the "
             "tester's clamps turn out to be the cause.";
    default:
      return "";
  }
}

std::string battery_fix(Cause cause, const FixContext& context) {
  if (must_not_be_charged(context.element.seen)) return std::string(keep_off_it);
  if (const auto told = fix_by_own_tests(context.own_tests); !told.empty()) return std::string(told);
  if (cause == Cause::discharged_battery)
    return "Ventilate, keep flames away, charge it fully, let it rest and test again.";
  if (context.resistance_over_sound >= failed_over_sound)
    return "Charge it fully in fresh air and load-test it; replace the battery if it fails.";
  return "Charge it fully in fresh air, let it rest and load-test it; keep it if it passes.";
}

std::string cable_fix(const FixContext& context) {
  return fmt::format(
      "Disconnect the battery first. Replace the cable by {} or larger and check that its fuse still fits.",
      context.better_gauge);
}

/// Whatever joins the battery to the rest can arc: it is taken off before a spanner touches a lug.
std::string_view caution(bool burns) {
  return burns ? "Switch off, let it cool (it burns) and disconnect the battery first. "
               : "Disconnect the battery first. ";
}

}  // namespace

std::string fix(Cause cause, const FixContext& context) {
  if (cause == Cause::weak_battery || cause == Cause::discharged_battery) return battery_fix(cause, context);
  if (cause == Cause::undersized) return cable_fix(context);
  auto action = remedy_by_eye(cause, context.element.seen);
  if (action.empty()) action = unseen(cause, context);
  return fmt::format("{}{}.", caution(context.burns), action);
}

}  // namespace ohmtrail::diagnose
