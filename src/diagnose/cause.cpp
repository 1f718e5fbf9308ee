#include "ohmtrail/diagnose/cause.hpp"

namespace ohmtrail::diagnose {

std::string_view word(Cause cause) {
  switch (cause) {
    case Cause::corroded_conductor:
      return "corroded-conductor";
    case Cause::bad_termination:
      return "bad-termination";
    case Cause::bad_joint:
      return "bad-joint";
    case Cause::worn_contact:
      return "worn-contact";
    case Cause::undersized:
      return "undersized";
    case Cause::weak_battery:
      return "weak-battery";
    case Cause::discharged_battery:
      return "discharged-battery";
  }
  return "";
}

}  // namespace ohmtrail::diagnose
