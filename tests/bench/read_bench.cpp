// Reading and checking a netlist, over nlohmann's bare SAX pass over the same bytes.
#include <benchmark/benchmark.h>
#include <malloc.h>

#include <cstdlib>
#include <nlohmann/json.hpp>

#include "bench/fastest.hpp"
#include "bench/large_netlist.hpp"
#include "ohmtrail/netlist/read.hpp"

namespace ohmtrail::bench {
namespace {

/// Takes every event and keeps nothing.
struct Ignore : nlohmann::json_sax<nlohmann::json> {
  bool null() override { return true; }
  bool boolean(bool) override { return true; }
  bool number_integer(number_integer_t) override { return true; }
  bool number_unsigned(number_unsigned_t) override { return true; }
  bool number_float(number_float_t, const string_t&) override { return true; }
  bool string(string_t&) override { return true; }
  bool binary(binary_t&) override { return true; }
  bool start_object(std::size_t) override { return true; }
  bool key(string_t&) override { return true; }
  bool end_object() override { return true; }
  bool start_array(std::size_t) override { return true; }
  bool end_array() override { return true; }
  bool parse_error(std::size_t, const std::string&, const nlohmann::json::exception&) override {
    return false;
  }
};

double bytes_in_use() {
  const auto info = mallinfo2();
  return static_cast<double>(info.uordblks + info.hblkhd);
}

void read_netlist(benchmark::State& state) {
  const std::string text = large_netlist(static_cast<int>(state.range(0)));
  Seconds best;
  for (auto _ : state)
    take_turns(
        best, 3,
        [&] {
          Ignore ignore;
          if (!nlohmann::json::sax_parse(text, &ignore)) std::abort();
        },
        [&] {
          if (!netlist::read(text)) std::abort();
        });
  const double before = bytes_in_use();
  const auto kept = netlist::read(text);
  state.counters["bare_ms"] = best.bare * 1e3;
  state.counters["ours_ms"] = best.ours * 1e3;
  state.counters["ratio"] = best.ratio();
  state.counters["kept_over_file"] = (bytes_in_use() - before) / static_cast<double>(text.size());
}

BENCHMARK(read_netlist)->Arg(100)->Arg(10000)->Arg(100000)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace ohmtrail::bench
