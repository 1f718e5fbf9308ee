#pragma once
#include <optional>

#include "netlist/parse.hpp"
#include "netlist/syntax_hint.hpp"

namespace ohmtrail::netlist {

/// Builds the tree from the parser's events. The parser tells no positions, so its input iterator shares how
/// far it has read, and a token begins after the blanks and separators that follow the one before it.
class TreeBuilder {
 public:
  TreeBuilder(Tree& tree, const char* const& read_to);

  bool null() { return scalar(Kind::null); }
  bool boolean(bool /*value*/) { return scalar(Kind::boolean); }
  bool number_integer(std::int64_t /*value*/) { return number(); }
  bool number_unsigned(std::uint64_t /*value*/) { return number(); }
  bool number_float(double /*value*/, const std::string& /*digits*/) { return number(); }
  template <class Bytes>
  bool binary(Bytes& /*bytes*/) {
    return false;
  }
  bool string(std::string& decoded);
  bool key(std::string& decoded);
  bool start_object(std::size_t /*members*/) { return open(Kind::object); }
  bool start_array(std::size_t /*items*/) { return open(Kind::array); }
  bool end_object() { return close(); }
  bool end_array() { return close(); }

  template <class Exception>
  bool parse_error(std::size_t /*position*/, const std::string& token, const Exception& exception) {
    error_ = explain_syntax({tree_.text(), read_to(), done_, token, exception.what(), pointer(), inside()});
    return false;
  }

  [[nodiscard]] std::optional<SyntaxError>& error() { return error_; }

 private:
  [[nodiscard]] std::uint32_t read_to() const;
  [[nodiscard]] std::uint32_t token_begin() const;
  bool keep_if_escaped(std::uint32_t begin, std::string& decoded);
  void add(Kind kind, std::uint32_t begin, std::uint32_t flags);
  bool close_scalar(std::uint32_t end);
  bool scalar(Kind kind);
  bool number();
  bool open(Kind kind);
  bool close();
  [[nodiscard]] Kind inside() const;
  [[nodiscard]] std::string pointer() const;
  [[nodiscard]] std::string step(std::uint32_t container, std::uint32_t child) const;

  Tree& tree_;
  const char* const& read_to_;
  std::uint32_t done_ = 0;  ///< end of the last token
  std::uint32_t key_begin_ = Node::no_key;
  bool key_escaped_ = false;
  std::vector<std::uint32_t> open_;
  std::optional<SyntaxError> error_;
};

}  // namespace ohmtrail::netlist
