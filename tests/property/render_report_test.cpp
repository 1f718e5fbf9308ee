#include <gtest/gtest.h>

#include "render/report.hpp"
#include "render/staircase.hpp"
#include "render/stairs.hpp"
#include "support/page_checks.hpp"
#include "support/random_cases.hpp"
#include "support/random_system.hpp"
#include "support/report_input.hpp"

/// What every report keeps, whatever the system: five pages, everything on them, nothing on anything else.
namespace ohmtrail::render {
namespace {

void expect_tidy(const std::vector<Scene>& pages) {
  test::expect_inside(pages);
  test::expect_letters_apart(pages);
  test::expect_values_whole(pages);
}

/// Pages before the circuits of a large diagram, which follow on sheets of their own.
std::size_t pages_of_the_report(const std::vector<Scene>& pages) {
  for (std::size_t k = 0; k < pages.size(); ++k)
    for (const Shape& shape : pages[k].shapes)
      if (const Text* text = std::get_if<Text>(&shape.what); text && text->text.starts_with("Sheet A: "))
        return k;
  return pages.size();
}

class RandomReport : public testing::TestWithParam<int> {
 protected:
  static ReportInput input_of(int k, bool long_names = false) {
    return test::report_input(
        test::random_system(static_cast<unsigned>(4000 + k), {GetParam(), true, true, long_names}));
  }
  static int cases() { return test::random_cases(GetParam() > 100 ? 2 : 5); }
};

TEST_P(RandomReport, KeepsToFivePages) {
  for (int k = 0; k < cases(); ++k) {
    SCOPED_TRACE(k);
    const auto pages = report_pages(input_of(k), k % 2 ? Paper::letter : Paper::a4);
    EXPECT_GE(pages_of_the_report(pages), 2u);
    EXPECT_LE(pages_of_the_report(pages), 5u);
    expect_tidy(pages);
  }
}

TEST_P(RandomReport, LongNamesStayOnThePage) {
  for (int k = 0; k < cases(); ++k) {
    SCOPED_TRACE(k);
    expect_tidy(report_pages(input_of(k, true)));
  }
}

TEST_P(RandomReport, TheChaptersAskedForAreTidyToo) {
  ReportInput input = input_of(1);
  input.bench_sheet = diagnose::bench_sheet(input.system, input.solved);
  input.before_after = BeforeAfter{};
  input.before_after->then = input.before_after->now = input.staircase;
  for (const network::Element& element : input.solved.front().network.elements)
    input.before_after->comparison.elements.push_back(
        {element.id, 0.01, 0.001, -0.009, diagnose::Change::better});
  for (const netlist::Load& load : input.system.loads)
    input.before_after->comparison.loads.push_back({load.id, "all on", 11.5, 12.25});
  expect_tidy(report_pages(input));
}

TEST_P(RandomReport, StaircasesAreTidyOnTheirOwnAndInAText) {
  for (int k = 0; k < cases(); ++k) {
    SCOPED_TRACE(k);
    const ReportInput input = input_of(k, k % 2 == 1);
    for (const solve::CaseSolution& solved : input.solved)
      for (const solve::LoadResult& load : solved.loads) {
        const auto steps = diagnose::staircase(solved, nullptr, load.element);
        if (!steps) continue;
        for (const bool titled : {true, false})
          expect_tidy({staircase_picture(input.system, *steps, titled)});
      }
  }
}

/// No load loses more than its own supply gives: the way starts at what feeds it, a converter included.
TEST_P(RandomReport, StaircasesEndAtTheirLoadsVoltage) {
  int walked = 0;
  for (int k = 0; k < cases(); ++k) {
    SCOPED_TRACE(k);
    const ReportInput input = input_of(k);
    for (const solve::CaseSolution& solved : input.solved)
      for (const solve::LoadResult& load : solved.loads) {
        const auto steps = diagnose::staircase(solved, nullptr, load.element);
        if (!steps) continue;
        ++walked;
        double lost = 0;
        for (const Stair& stair : stairs_of(input.system, *steps))
          if (stair.role != network::Role::load) lost += stair.lost;
        EXPECT_NEAR(steps->open_circuit - lost, load.volts, 1e-6) << steps->load;
      }
  }
  EXPECT_GT(walked, 0);
}

INSTANTIATE_TEST_SUITE_P(Sizes, RandomReport, testing::Values(10, 60, 150, 300));

}  // namespace
}  // namespace ohmtrail::render
