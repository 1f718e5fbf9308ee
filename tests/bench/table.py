#!/usr/bin/env python3
"""Runs the benchmarks of a build folder and prints what they measured beside what was wanted.

    cmake --preset bench && cmake --build --preset bench
    python3 tests/bench/table.py build/bench

A ratio is ours over the bare library (Eigen's SimplicialLDLT with AMD, nlohmann's SAX parser) doing the same on
the same data, by turns in the same run, in seconds of the processor, the quickest turn of each.
"""
import json
import math
import subprocess
import sys


def rows_of(build, program):
    ran = subprocess.run([f"{build}/tests/bench/{program}", "--benchmark_format=json"],
                         capture_output=True, text=True, check=True)
    return {row["name"].replace("/iterations:30", ""): row for row in json.loads(ran.stdout)["benchmarks"]}


def ratios(rows, names):
    return ", ".join(f"{rows[name]['ratio']:.2f}" for name in names)


def growth(rows, whose):
    """Time from 10³ to 10⁶ elements over that of n log n."""
    small, large = rows["linear/1000"][whose], rows["linear/1000000"][whose]
    return large / small / (1e6 * math.log(1e6) / (1e3 * math.log(1e3)))


def table(build):
    solve, rank = rows_of(build, "solve_bench"), rows_of(build, "rank_bench")
    read, process = rows_of(build, "read_bench"), rows_of(build, "process_bench")
    power = ["power_loads/1000", "power_loads/100000"]
    return [
        ("solve, linear, 10³, 10⁵, 10⁶ elements, over ordering + factor + solve", "1.5",
         ratios(solve, ["linear/1000", "linear/100000", "linear/1000000"])),
        ("a tenth of constant power, 10³, 10⁵, over its orderings + factorings + solves", "1.5", ratios(solve, power)),
        ("the same: orderings; Newton steps", "1; 6",
         "; ".join(str(int(max(solve[name][key] for name in power))) for key in ["orderings", "steps"])),
        ("wires that warm, 10³, 10⁵, over the same without", "2", ratios(solve, ["warm_wires/1000", "warm_wires/100000"])),
        ("all what-ifs of a radial system of 10⁵, current and power loads, over one solve", "2",
         ratios(rank, ["radial/100000/power:0", "radial/100000/power:1"])),
        ("one what-if of a meshed system of 10⁵, over one back-substitution", "about 1", ratios(rank, ["meshed/100000"])),
        ("every element solved again to full accuracy, 10³, over as many factorings", "below 1",
         ratios(rank, ["solved_again/1000"])),
        ("reading a netlist of 10³, 10⁵, 10⁶ elements, over a bare SAX pass", "2",
         ratios(read, ["read_netlist/100", "read_netlist/10000", "read_netlist/100000"])),
        ("what reading keeps, over the file", "6", f"{read['read_netlist/100000']['kept_over_file']:.1f}"),
        ("growth from 10³ to 10⁶ elements, over n log n; the bare library's", "1.2",
         f"{growth(solve, 'ours_ms'):.2f}; {growth(solve, 'bare_ms'):.2f}"),
        ("memory at 10⁶ elements, GiB", "2", f"{solve['linear/1000000']['peak_GiB']:.2f}"),
        ("start of the program, ms; `solve` of 145 elements, ms", "15; 15",
         f"{process['start']['ours_ms']:.0f}; {process['solve_a_boat']['ours_ms']:.0f}"),
    ]


if __name__ == "__main__":
    print("| what | wanted, at most | measured |\n| --- | --- | --- |")
    for row in table(sys.argv[1]):
        print(f"| {' | '.join(row)} |")
