#include "netlist/scan.hpp"

#include <array>

#include "netlist/parse.hpp"

// Half of the time that reading took went into the full parser's copies of every string; this one, which only
// finds where tokens begin and end, takes a sixth of that.

namespace ohmtrail::netlist {

namespace {

/// Bytes that stand for themselves in a string: ASCII but controls, the quote and the backslash.
constexpr std::array<bool, 256> plain_bytes() {
  std::array<bool, 256> plain{};
  for (std::size_t c = 0x20; c < 0x80; ++c) plain[c] = c != '"' && c != '\\';
  return plain;
}
constexpr std::array<bool, 256> plain_byte = plain_bytes();

}  // namespace

class Scanner {
 public:
  Scanner(std::string_view text, std::vector<Node>& nodes) : text_(text), nodes_(nodes) {}

  bool run() {
    constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
    if (text_.starts_with(byte_order_mark)) at_ = byte_order_mark.size();
    blanks();
    if (!value()) return false;
    while (!open_.empty()) {
      if (!step()) return false;
    }
    blanks();
    return at_ == text_.size();
  }

 private:
  [[nodiscard]] char peek() const { return at_ < text_.size() ? text_[at_] : '\0'; }
  [[nodiscard]] bool digit() const { return peek() >= '0' && peek() <= '9'; }
  [[nodiscard]] std::uint32_t here() const { return static_cast<std::uint32_t>(at_); }

  void blanks() {
    while (static_cast<unsigned char>(peek()) <= ' ' && blank()) ++at_;
  }
  [[nodiscard]] bool blank() const {
    return peek() == ' ' || peek() == '\n' || peek() == '\t' || peek() == '\r';
  }

  /// One more member or item of the innermost container, or its end.
  bool step() {
    blanks();
    if (peek() == (in_object_ ? '}' : ']')) return close();
    if (!fresh_ && peek() != ',') return false;
    if (!fresh_) ++at_;
    blanks();
    fresh_ = false;
    return (!in_object_ || key()) && value();
  }

  bool key() {
    key_begin_ = here();
    if (!quoted()) return false;
    blanks();
    if (peek() != ':') return false;
    ++at_;
    blanks();
    return true;
  }

  bool value() {
    const std::uint32_t begin = here();
    switch (peek()) {
      case '{':
        return open(Kind::object);
      case '[':
        return open(Kind::array);
      case '"':
        return quoted() && scalar(Kind::string, begin);
      case 't':
        return literal("true") && scalar(Kind::boolean, begin);
      case 'f':
        return literal("false") && scalar(Kind::boolean, begin);
      case 'n':
        return literal("null") && scalar(Kind::null, begin);
      default:
        return number() && scalar(Kind::number, begin);
    }
  }

  void add(Kind kind, std::uint32_t begin) {
    nodes_.push_back({begin, begin, key_begin_, static_cast<std::uint32_t>(kind) << Node::kind_shift});
    key_begin_ = Node::no_key;
  }

  void end(Node& node) {
    node.end = here();
    node.packed |= static_cast<std::uint32_t>(nodes_.size());
  }

  bool scalar(Kind kind, std::uint32_t begin) {
    add(kind, begin);
    end(nodes_.back());
    return true;
  }

  bool open(Kind kind) {
    if (open_.size() == deepest_nesting) return false;
    add(kind, here());
    open_.push_back(static_cast<std::uint32_t>(nodes_.size() - 1));
    ++at_;
    fresh_ = true;
    in_object_ = kind == Kind::object;
    return true;
  }

  bool close() {
    ++at_;
    end(nodes_[open_.back()]);
    open_.pop_back();
    fresh_ = false;
    in_object_ = !open_.empty() && text_[nodes_[open_.back()].begin] == '{';
    return true;
  }

  bool literal(std::string_view word) {
    if (text_.substr(at_, word.size()) != word) return false;
    at_ += word.size();
    return true;
  }

  bool digits() {
    const std::size_t first = at_;
    while (digit()) ++at_;
    return at_ > first;
  }

  bool number() {
    constexpr std::size_t longest = 300;  // beyond it, it may be too large for a double
    const std::size_t begin = at_;
    if (peek() == '-') ++at_;
    const bool leading_zero = peek() == '0';
    const std::size_t first = at_;
    if (!digits() || (leading_zero && at_ > first + 1)) return false;
    if (peek() == '.') {
      ++at_;
      if (!digits()) return false;
    }
    return peek() != 'e' && peek() != 'E' && at_ - begin <= longest;
  }

  bool quoted() {
    if (peek() != '"') return false;
    for (++at_; at_ < text_.size();) {
      const auto c = static_cast<unsigned char>(text_[at_]);
      if (plain_byte[c]) {
        ++at_;
      } else if (c == '"') {
        ++at_;
        return true;
      } else if (c < 0x80 || !character(c)) {
        return false;
      }
    }
    return false;
  }

  /// One character of UTF-8 beyond ASCII (RFC 3629, section 4).
  bool character(unsigned char lead) {
    const std::size_t length = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
    if (lead < 0xC2 || lead > 0xF4 || at_ + length > text_.size()) return false;
    const auto second = static_cast<unsigned char>(text_[at_ + 1]);
    const unsigned char low = lead == 0xE0 ? 0xA0 : lead == 0xF0 ? 0x90 : 0x80;
    const unsigned char high = lead == 0xED ? 0x9F : lead == 0xF4 ? 0x8F : 0xBF;
    if (second < low || second > high) return false;
    for (std::size_t k = 2; k < length; ++k) {
      const auto next = static_cast<unsigned char>(text_[at_ + k]);
      if (next < 0x80 || next > 0xBF) return false;
    }
    at_ += length;
    return true;
  }

  std::string_view text_;
  std::vector<Node>& nodes_;
  std::size_t at_ = 0;
  std::uint32_t key_begin_ = Node::no_key;
  std::vector<std::uint32_t> open_;
  bool in_object_ = false;  ///< the innermost container is an object
  bool fresh_ = false;      ///< nothing stands in it yet
};

// Room for more values than a netlist of this length has. What of it is not used is never touched, and so
// costs no memory; to grow by and by would touch twice what is used.
bool scan(Tree& tree) {
  constexpr std::size_t few_bytes_a_value = 8;
  tree.nodes_.reserve(tree.text_.size() / few_bytes_a_value + 1);
  if (Scanner(tree.text_, tree.nodes_).run()) return true;
  tree.nodes_.clear();
  return false;
}

}  // namespace ohmtrail::netlist
