#include "netlist/tree.hpp"

#include <algorithm>
#include <charconv>

namespace ohmtrail::netlist {

std::string_view Tree::unescaped(std::uint32_t begin) const {
  const auto found = std::lower_bound(unescaped_.begin(), unescaped_.end(), begin,
                                      [](const auto& entry, std::uint32_t at) { return entry.first < at; });
  return found->second;
}

std::string_view Value::key() const {
  if (!has_key()) return {};
  const std::uint32_t quote = node().key_begin;
  if ((node().packed & Node::key_escaped) != 0) return tree_->unescaped(quote);
  const std::string_view rest = tree_->text().substr(quote + 1);
  return rest.substr(0, rest.find('"'));
}

std::string_view Value::source() const {
  return tree_->text().substr(begin(), end() - begin());
}

std::string_view Value::string() const {
  if (!is(Kind::string)) return {};
  if ((node().packed & Node::value_escaped) != 0) return tree_->unescaped(begin());
  return tree_->text().substr(begin() + 1, end() - begin() - 2);
}

double Value::number() const {
  double value = 0;
  const std::string_view digits = source();
  std::from_chars(digits.data(), digits.data() + digits.size(), value);
  return value;
}

Value Value::member(std::string_view key) const {
  if (exists() && is(Kind::object)) {
    for (const Value child : children()) {
      if (child.key_is(key)) return child;
    }
  }
  return {};
}

std::size_t Value::count() const {
  std::size_t n = 0;
  for ([[maybe_unused]] const Value child : children()) ++n;
  return n;
}

std::string Value::pointer() const {
  std::string path;
  Value at = tree_->root();
  while (at.index() != index_) {
    std::size_t position = 0;
    for (const Value child : at.children()) {
      if (index_ < child.after()) {
        path += "/" + (child.has_key() ? pointer_step(child.key()) : std::to_string(position));
        at = child;
        break;
      }
      ++position;
    }
  }
  return path;
}

std::string pointer_step(std::string_view text) {
  std::string step;
  for (const char c : text) {
    if (c == '~') {
      step += "~0";
    } else if (c == '/') {
      step += "~1";
    } else {
      step += c;
    }
  }
  return step;
}

}  // namespace ohmtrail::netlist
