#pragma once
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// A JSON text as a flat tree: every value in the order of the text, with the bytes it was written in.
namespace ohmtrail::netlist {

enum class Kind : std::uint8_t { null, boolean, number, string, array, object };

/// 16 bytes a value. Offsets are bytes from the start of the text, which is at most 64 MiB.
struct Node {
  static constexpr std::uint32_t no_key = UINT32_MAX;
  static constexpr unsigned kind_shift = 26;
  static constexpr std::uint32_t after_mask = (1U << kind_shift) - 1;
  static constexpr std::uint32_t value_escaped = 1U << 29;
  static constexpr std::uint32_t key_escaped = 1U << 30;

  std::uint32_t begin = 0;           ///< first byte of the value
  std::uint32_t end = 0;             ///< one past its last byte
  std::uint32_t key_begin = no_key;  ///< opening quote of its key; `no_key` in arrays and at the root
  std::uint32_t packed = 0;          ///< index one past its subtree (26 bits), kind (3), escaped flags (2)
};

class Value;

/// Owns the nodes, not the text: the text must outlive it.
class Tree {
 public:
  explicit Tree(std::string_view text) : text_(text) {}

  [[nodiscard]] std::string_view text() const { return text_; }
  [[nodiscard]] Value root() const;
  [[nodiscard]] std::size_t size() const { return nodes_.size(); }

 private:
  friend class Value;
  friend class TreeBuilder;
  friend bool scan(Tree& tree);
  /// The text of an escaped string, decoded, by the offset of its opening quote.
  [[nodiscard]] std::string_view unescaped(std::uint32_t begin) const;

  std::string_view text_;
  std::vector<Node> nodes_;  ///< in the order of the text: a container stands before what it holds
  std::vector<std::pair<std::uint32_t, std::string>> unescaped_;  ///< by rising offset
};

/// One value of a tree. Cheap to copy; valid as long as the tree.
class Value {
 public:
  Value() = default;
  Value(const Tree& tree, std::uint32_t index) : tree_(&tree), index_(index) {}

  [[nodiscard]] bool exists() const { return tree_ != nullptr; }
  [[nodiscard]] std::uint32_t index() const { return index_; }
  [[nodiscard]] Kind kind() const { return static_cast<Kind>((node().packed >> Node::kind_shift) & 7U); }
  [[nodiscard]] bool is(Kind k) const { return kind() == k; }
  [[nodiscard]] std::uint32_t begin() const { return node().begin; }
  [[nodiscard]] std::uint32_t end() const { return node().end; }
  /// One past the last node of the subtree.
  [[nodiscard]] std::uint32_t after() const { return node().packed & Node::after_mask; }
  [[nodiscard]] bool has_key() const { return node().key_begin != Node::no_key; }
  [[nodiscard]] std::uint32_t key_begin() const { return node().key_begin; }
  [[nodiscard]] std::string_view key() const;
  /// Whether its key is `name`, which must hold nothing that JSON escapes. Quicker than asking for the key.
  [[nodiscard]] bool key_is(std::string_view name) const {
    if (!has_key() || (node().packed & Node::key_escaped) != 0) return key() == name;
    const std::string_view rest = tree_->text().substr(key_begin() + 1);
    return rest.size() > name.size() && rest[name.size()] == '"' && rest.starts_with(name);
  }

  /// The bytes it was written in.
  [[nodiscard]] std::string_view source() const;
  /// What a string says; empty for other kinds.
  [[nodiscard]] std::string_view string() const;
  [[nodiscard]] bool boolean() const { return source() == "true"; }
  [[nodiscard]] double number() const;

  /// The member of an object with this key; one that does not exist where there is none. The first of
  /// duplicates.
  [[nodiscard]] Value member(std::string_view key) const;

  /// Members of an object, items of an array, in order.
  class Iterator {
   public:
    Iterator(const Tree* tree, std::uint32_t index) : tree_(tree), index_(index) {}
    Value operator*() const { return {*tree_, index_}; }
    Iterator& operator++() {
      index_ = Value{*tree_, index_}.after();
      return *this;
    }
    bool operator!=(const Iterator& other) const { return index_ != other.index_; }

   private:
    const Tree* tree_;
    std::uint32_t index_;
  };
  struct Children {
    Iterator first, last;
    [[nodiscard]] Iterator begin() const { return first; }
    [[nodiscard]] Iterator end() const { return last; }
  };
  /// None for values that are neither array nor object, or do not exist.
  [[nodiscard]] Children children() const {
    if (!exists()) return {{nullptr, 0}, {nullptr, 0}};
    return {{tree_, index_ + 1}, {tree_, after()}};
  }
  [[nodiscard]] std::size_t count() const;

  /// RFC 6901.
  [[nodiscard]] std::string pointer() const;

 private:
  [[nodiscard]] const Node& node() const { return tree_->nodes_[index_]; }

  const Tree* tree_ = nullptr;
  std::uint32_t index_ = 0;
};

inline Value Tree::root() const {
  return {*this, 0};
}

/// `text` as one step of a JSON pointer: ~ and / escaped.
[[nodiscard]] std::string pointer_step(std::string_view text);

}  // namespace ohmtrail::netlist
