#pragma once
#include <memory>
#include <utility>

namespace ohmtrail::netlist {

/// What few of very many things have: like std::optional, but where it is absent it takes the room of a
/// pointer. Copies are deep.
template <class T>
class Rare {
 public:
  Rare() = default;
  Rare(T value) : held_(std::make_unique<T>(std::move(value))) {}
  Rare(const Rare& other) : held_(other.held_ ? std::make_unique<T>(*other.held_) : nullptr) {}
  Rare(Rare&&) noexcept = default;
  Rare& operator=(Rare other) noexcept {
    held_ = std::move(other.held_);
    return *this;
  }
  ~Rare() = default;

  [[nodiscard]] bool has_value() const { return held_ != nullptr; }
  [[nodiscard]] explicit operator bool() const { return has_value(); }
  [[nodiscard]] T& operator*() { return *held_; }
  [[nodiscard]] const T& operator*() const { return *held_; }
  [[nodiscard]] T* operator->() { return held_.get(); }
  [[nodiscard]] const T* operator->() const { return held_.get(); }
  [[nodiscard]] T value_or(T other) const { return held_ ? *held_ : std::move(other); }

  T& emplace() { return *(held_ = std::make_unique<T>()); }
  void reset() { held_.reset(); }

  friend bool operator==(const Rare& a, const Rare& b) { return a && b ? *a == *b : !a && !b; }

 private:
  std::unique_ptr<T> held_;
};

}  // namespace ohmtrail::netlist
