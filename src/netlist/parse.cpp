#include "netlist/parse.hpp"

#include <iterator>
#include <nlohmann/json.hpp>

#include "netlist/scan.hpp"
#include "netlist/tree_builder.hpp"

namespace ohmtrail::netlist {

namespace {

/// Reads a text and shares how far it has come.
class SharedPosition {
 public:
  using value_type = char;
  using difference_type = std::ptrdiff_t;
  using pointer = const char*;
  using reference = const char&;
  using iterator_category = std::input_iterator_tag;

  SharedPosition(const char** position, const char* at) : position_(position), at_(at) {}
  reference operator*() const { return *at_; }
  SharedPosition& operator++() {
    *position_ = ++at_;
    return *this;
  }
  friend bool operator!=(const SharedPosition& a, const SharedPosition& b) { return a.at_ != b.at_; }

 private:
  const char** position_;
  const char* at_;
};

}  // namespace

tl::expected<Tree, SyntaxError> parse(std::string_view text) {
  Tree tree(text);
  if (scan(tree)) return tree;
  return parse_in_full(text);
}

tl::expected<Tree, SyntaxError> parse_in_full(std::string_view text) {
  if (text.find_first_not_of(" \t\r\n") == std::string_view::npos) {
    return tl::unexpected(
        SyntaxError{"empty-file", 0, "", "the file is empty", "a netlist",
                    R"(the least one begins {"ohmtrail": 1, "system": {…}, "batteries": [{…}]})"});
  }
  Tree tree(text);
  const char* position = text.data();
  TreeBuilder builder(tree, position);
  const SharedPosition first(&position, text.data());
  const SharedPosition last(&position, text.data() + text.size());
  if (!nlohmann::json::sax_parse(first, last, &builder)) return tl::unexpected(std::move(*builder.error()));
  return tree;
}

}  // namespace ohmtrail::netlist
