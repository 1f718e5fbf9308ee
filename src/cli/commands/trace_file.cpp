#include "cli/commands/trace_file.hpp"

#include <fmt/format.h>

#include "cli/pipeline.hpp"
#include "ohmtrail/netlist/write.hpp"

namespace ohmtrail::cli {
namespace {

using Edited = tl::expected<std::string, std::string>;

/// The text with one change made.
class Edit {
 public:
  explicit Edit(netlist::Document& document) : document_(document) {}

  Edited operator()(const netlist::Reading& reading) {
    document_.add_reading(reading);
    return document_.text();
  }

  Edited operator()(const diagnose::SeenOn& seen) {
    if (!document_.add_seen(seen.element, seen.seen))
      return tl::unexpected(fmt::format("there is nothing named \"{}\" that could look so", seen.element));
    return document_.text();
  }

  Edited operator()(const diagnose::TakeBack&) {
    std::vector<netlist::Reading> kept = document_.system().readings;
    if (kept.empty()) return tl::unexpected(std::string("there is no reading to take back"));
    kept.pop_back();
    document_.remove_readings();
    auto without = netlist::Document::open(document_.text());
    if (!without) return tl::unexpected(std::string("the file would not be right without it"));
    for (const netlist::Reading& reading : kept) without->add_reading(reading);
    return without->text();
  }

 private:
  netlist::Document& document_;
};

}  // namespace

tl::expected<TraceFile, Exit> TraceFile::open(const std::string& path, const std::string& output,
                                              const Doors& doors) {
  const bool going_on = !output.empty() && doors.files.read(output).has_value();
  const std::string& from = going_on ? output : path;
  auto job = read_job(from, doors);
  if (!job) return tl::unexpected(job.error());
  auto text = doors.files.read(from);
  if (!text) {
    doors.complain(fmt::format("{}: {}", from, text.error()));
    return tl::unexpected(Exit::mistake);
  }
  TraceFile out(output.empty() ? path : output, std::move(*text), std::move(job->read.system), doors);
  if (output.empty() || going_on) {
    out.idle_ = doors.files.age(from);
    return out;
  }
  // At once: better to hear now that it cannot be written than after the first reading.
  if (const auto kept = out.keep(out.text_); !kept) {
    doors.complain(fmt::format("{}: {}", output, kept.error()));
    return tl::unexpected(Exit::not_written);
  }
  return out;
}

tl::expected<TraceFile, Exit> TraceFile::create(const std::string& path, std::string text,
                                                const Doors& doors) {
  TraceFile out(path, "", {}, doors);
  if (const auto kept = out.keep(std::move(text)); !kept) {
    doors.complain(fmt::format("{}: {}", path, kept.error()));
    return tl::unexpected(Exit::not_written);
  }
  return out;
}

tl::expected<void, std::string> TraceFile::keep(std::string text) {
  auto read = netlist::read(text);
  if (!read) return tl::unexpected(read.error().front().text + ", expected " + read.error().front().expected);
  if (const auto written = doors_->files.write(path_, text, Overwrite::also_an_input); !written)
    return tl::unexpected(written.error());
  text_ = std::move(text);
  system_ = std::move(read->system);
  return {};
}

tl::expected<void, std::string> TraceFile::apply(const diagnose::TraceChange& change) {
  auto document = netlist::Document::open(text_);
  if (!document) return tl::unexpected(document.error().front().text);
  auto edited = std::visit(Edit(*document), change);
  if (!edited) return tl::unexpected(edited.error());
  return keep(std::move(*edited));
}

}  // namespace ohmtrail::cli
