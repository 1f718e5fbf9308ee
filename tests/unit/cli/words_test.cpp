#include "cli/text/words.hpp"

#include <gmock/gmock.h>

#include "cli/json/common.hpp"
#include "ohmtrail/netlist/read.hpp"

// Where an element is, in the words that a person finds it by. The system is invented.
namespace {

using namespace ohmtrail;
using network::Role;

netlist::System skiff() {
  auto read = netlist::read(R"json({"ohmtrail": 1,
    "system": {"name": "skiff (invented)", "nominal": 12, "terminations": "contact-and-crimp"},
    "batteries": [{"id": "bank", "plus": "b+", "minus": "b-", "nominal": 12}],
    "chargers": [{"id": "shore", "plus": "b+", "minus": "b-", "setpoint": 14, "limit": 20}],
    "runs": [{"id": "feed", "from": "b+", "to": "s", "gauge": "6 AWG", "length": 2,
              "return": {"from": "l-", "to": "h"}}],
    "joints": [{"id": "stud", "from": "i", "to": "f", "kind": "stud"}],
    "switches": [{"id": "main", "from": "s", "to": "i", "kind": "battery-switch"}],
    "fuses": [{"id": "pump fuse", "from": "f", "to": "d", "rating": 20}],
    "shunts": [{"id": "meter", "from": "h", "to": "b-", "rating": 100, "drop": 0.05}],
    "isolators": [{"id": "splitter", "from": "d", "to": "l+"}],
    "loads": [{"id": "pump", "plus": "l+", "minus": "l-", "takes": "5 A"}],
    "points": {"s": {"place": "under the berth"}, "l-": {"place": "in the bilge"}, "i": {"place": ""},
               "d": {"place": "panel"}}
  })json");
  if (!read) throw std::runtime_error(netlist::format(read.error().front(), "test"));
  return read->system;
}

std::string where(const std::string& id) {
  const netlist::System system = skiff();
  const network::Network network = network::build(system, system.cases.front());
  return cli::where_in_words(system, network,
                             network.elements.at(static_cast<std::size_t>(network.element(id).value())));
}

TEST(Where, PartsOfARunAreCableLugsAndCrimps) {
  EXPECT_EQ(where("feed"), "the cable \"feed\"");
  EXPECT_EQ(where("feed/from"), "the lug of \"feed\" at \"b+\"");
  EXPECT_EQ(where("feed/to"), "the lug of \"feed\" at \"s\" (under the berth)");
  EXPECT_EQ(where("feed/from-crimp"), "the crimp of \"feed\" at \"b+\"");
  EXPECT_EQ(where("feed/to-crimp"), "the crimp of \"feed\" at \"s\" (under the berth)");
}

TEST(Where, PartsOfAReturnSaySo) {
  EXPECT_EQ(where("feed/return-wire"), "the return cable \"feed\"");
  EXPECT_EQ(where("feed/return-from"), "the lug of the return of \"feed\" at \"l-\" (in the bilge)");
  EXPECT_EQ(where("feed/return-to"), "the lug of the return of \"feed\" at \"h\"");
  EXPECT_EQ(where("feed/return-from-crimp"), "the crimp of the return of \"feed\" at \"l-\" (in the bilge)");
  EXPECT_EQ(where("feed/return-to-crimp"), "the crimp of the return of \"feed\" at \"h\"");
}

TEST(Where, OthersAreAtThePlaceOfEitherOfTheirPoints) {
  EXPECT_EQ(where("main"), "the switch \"main\" (under the berth)");
  EXPECT_EQ(where("pump fuse"), "the fuse \"pump fuse\" (panel)") << "its other end has a place";
  EXPECT_EQ(where("stud"), "the joint \"stud\"") << "neither has";
  EXPECT_EQ(where("splitter"), "the isolator \"splitter\" (panel)");
  EXPECT_EQ(where("bank"), "the battery \"bank\"");
  EXPECT_EQ(where("shore"), "the charger \"shore\"");
  EXPECT_EQ(where("meter"), "the shunt \"meter\"");
  EXPECT_EQ(where("pump"), "the load \"pump\" (in the bilge)");
}

/// Every role has a word for people and one of the contract, no two alike.
TEST(Words, OfRolesAndCausesAreThereAndDiffer) {
  std::vector<std::string> shown, contract, causes;
  for (int k = 0; k <= static_cast<int>(Role::load); ++k) {
    shown.push_back(cli::role_in_words(static_cast<Role>(k)));
    contract.push_back(cli::role_word(static_cast<Role>(k)));
  }
  for (int k = 0; k <= static_cast<int>(diagnose::Cause::discharged_battery); ++k)
    causes.push_back(cli::cause_in_words(static_cast<diagnose::Cause>(k)));
  EXPECT_THAT(contract, testing::ElementsAre("battery", "charger", "wire", "termination", "joint", "switch",
                                             "fuse", "shunt", "isolator", "load"));
  for (auto* words : {&shown, &contract, &causes}) {
    EXPECT_THAT(*words, testing::Not(testing::Contains("")));
    std::sort(words->begin(), words->end());
    EXPECT_EQ(std::adjacent_find(words->begin(), words->end()), words->end());
  }
}

}  // namespace
