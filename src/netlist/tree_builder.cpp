#include "netlist/tree_builder.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace ohmtrail::netlist {

TreeBuilder::TreeBuilder(Tree& tree, const char* const& read_to) : tree_(tree), read_to_(read_to) {
  constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
  if (tree.text_.starts_with(byte_order_mark)) done_ = byte_order_mark.size();
}

bool TreeBuilder::string(std::string& decoded) {
  const std::uint32_t begin = token_begin();
  const bool escaped = keep_if_escaped(begin, decoded);
  add(Kind::string, begin, escaped ? Node::value_escaped : 0U);
  return close_scalar(read_to());
}

bool TreeBuilder::key(std::string& decoded) {
  key_begin_ = token_begin();
  key_escaped_ = keep_if_escaped(key_begin_, decoded);
  done_ = read_to();
  return true;
}

std::uint32_t TreeBuilder::read_to() const {
  return static_cast<std::uint32_t>(read_to_ - tree_.text_.data());
}

std::uint32_t TreeBuilder::token_begin() const {
  std::uint32_t at = done_;
  for (const std::string_view text = tree_.text_; at < text.size(); ++at) {
    const char c = text[at];
    if (c != ' ' && c != '\n' && c != ',' && c != ':' && c != '\t' && c != '\r') break;
  }
  return at;
}

// An escape is always longer than what it stands for.
bool TreeBuilder::keep_if_escaped(std::uint32_t begin, std::string& decoded) {
  if (decoded.size() + 2 == read_to() - begin) return false;
  tree_.unescaped_.emplace_back(begin, std::move(decoded));
  return true;
}

void TreeBuilder::add(Kind kind, std::uint32_t begin, std::uint32_t flags) {
  const std::uint32_t kind_bits = static_cast<std::uint32_t>(kind) << Node::kind_shift;
  tree_.nodes_.push_back(
      {begin, begin, key_begin_, kind_bits | flags | (key_escaped_ ? Node::key_escaped : 0U)});
  key_begin_ = Node::no_key;
  key_escaped_ = false;
}

bool TreeBuilder::close_scalar(std::uint32_t end) {
  Node& node = tree_.nodes_.back();
  node.end = done_ = end;
  node.packed |= static_cast<std::uint32_t>(tree_.nodes_.size());
  return true;
}

bool TreeBuilder::scalar(Kind kind) {
  add(kind, token_begin(), 0);
  return close_scalar(read_to());
}

// The parser has looked one byte past a number, unless the text ended there.
bool TreeBuilder::number() {
  const std::uint32_t begin = token_begin();
  const auto end = tree_.text_.find_first_not_of("+-.0123456789eE", begin);
  add(Kind::number, begin, 0);
  return close_scalar(static_cast<std::uint32_t>(std::min(end, tree_.text_.size())));
}

bool TreeBuilder::open(Kind kind) {
  const std::uint32_t begin = token_begin();
  if (open_.size() == deepest_nesting) {
    error_ = SyntaxError{"nested-too-deep",
                         begin,
                         pointer(),
                         fmt::format("brackets are nested more than {} deep", deepest_nesting),
                         "a netlist, which nests six deep",
                         "look for brackets that were never closed"};
    return false;
  }
  add(kind, begin, 0);
  open_.push_back(static_cast<std::uint32_t>(tree_.nodes_.size() - 1));
  done_ = begin + 1;
  return true;
}

bool TreeBuilder::close() {
  Node& node = tree_.nodes_[open_.back()];
  open_.pop_back();
  node.end = done_ = read_to();
  node.packed |= static_cast<std::uint32_t>(tree_.nodes_.size());
  return true;
}

Kind TreeBuilder::inside() const {
  return open_.empty() ? Kind::null : Value{tree_, open_.back()}.kind();
}

// Containers that are still open have no end yet, so the way down is read off the stack.
std::string TreeBuilder::pointer() const {
  std::string path;
  for (std::size_t level = 0; level + 1 < open_.size(); ++level) path += step(open_[level], open_[level + 1]);
  if (key_begin_ != Node::no_key) {
    const auto rest = tree_.text_.substr(key_begin_ + 1);
    path += "/" + pointer_step(rest.substr(0, rest.find('"')));
  } else if (inside() == Kind::array) {
    path += step(open_.back(), static_cast<std::uint32_t>(tree_.nodes_.size()));
  }
  return path;
}

std::string TreeBuilder::step(std::uint32_t container, std::uint32_t child) const {
  if (Value{tree_, container}.is(Kind::object)) return "/" + pointer_step(Value{tree_, child}.key());
  std::size_t position = 0;
  for (std::uint32_t at = container + 1; at < child; at = Value{tree_, at}.after()) ++position;
  return "/" + std::to_string(position);
}

}  // namespace ohmtrail::netlist
