#include "netlist/patch.hpp"

#include <algorithm>

#include "netlist/print_json.hpp"

namespace ohmtrail::netlist {

namespace {

std::string_view between(Value container, std::uint32_t first, std::uint32_t last) {
  return container.source().substr(first - container.begin(), last - first);
}

/// Blanks after the last line break: how deep what follows them stands.
std::string indent_of(std::string_view lead) {
  const auto line = lead.rfind('\n');
  return line == std::string_view::npos ? std::string() : std::string(lead.substr(line + 1));
}

/// Writes members or items one after another in the manner of those that stand there already.
class ContainerPrinter {
 public:
  ContainerPrinter(Value container, std::string& out)
      : container_(container), out_(out), done_(container.begin() + 1) {
    out_ += container.source().front();
  }

  /// One that stands there: what leads to it, its key, and then its value by `print`.
  template <class Print>
  void keep(Value child, Print print) {
    lead_to(child);
    out_ += current_lead();
    if (child.has_key()) out_ += between(container_, child.key_begin(), child.begin());
    print();
    written_ = true;
    done_ = child.end();
  }

  void skip(Value child) {
    lead_to(child);
    done_ = child.end();
  }

  void add(std::string_view key, const Json& value) {
    const std::string lead = current_lead_for_new();
    out_ += lead;
    if (!key.empty()) {
      out_ += Json(key).dump();
      out_ += colon_;
    }
    if (lead.find('\n') != std::string::npos)
      print_section(value, indent_of(lead), out_);
    else
      print_line(value, out_);
    written_ = true;
  }

  void close() {
    const std::string_view tail = between(container_, done_, container_.end());
    out_ += written_ ? tail : tail.substr(tail.size() - 1);
  }

 private:
  void lead_to(Value child) {
    const std::uint32_t begin = child.has_key() ? child.key_begin() : child.begin();
    const std::string_view lead = between(container_, done_, begin);
    if (seen_ == 0)
      first_lead_ = lead;
    else
      separator_ = lead;
    lead_ = lead;
    if (child.has_key()) {
      const std::string_view head = between(container_, child.key_begin(), child.begin());
      colon_ = head.substr(head.rfind('"') + 1);
    }
    ++seen_;
  }

  // After one that was left out at the front, the next is now the first.
  [[nodiscard]] std::string current_lead() const { return std::string(written_ ? lead_ : first_lead_); }

  [[nodiscard]] std::string current_lead_for_new() const {
    if (!written_) return std::string(first_lead_);
    if (seen_ > 1) return std::string(separator_);
    return first_lead_.empty() ? ", " : "," + std::string(first_lead_);
  }

  Value container_;
  std::string& out_;
  std::uint32_t done_;
  std::string_view first_lead_, separator_, lead_, colon_ = ": ";
  std::size_t seen_ = 0;
  bool written_ = false;
};

void print_object(Value object, const Patch& patch, std::string& out) {
  ContainerPrinter printer(object, out);
  std::vector<std::string_view> met;
  for (const Value child : object.children()) {
    const Patch* edit = patch.find(child.key());
    if (edit == nullptr) {
      printer.keep(child, [&] { out += child.source(); });
      continue;
    }
    met.push_back(child.key());
    if (edit->removed)
      printer.skip(child);
    else
      printer.keep(child, [&] { print_patched(child, *edit, out); });
  }
  for (const auto& [key, edit] : patch.members) {
    if (edit.value && std::find(met.begin(), met.end(), key) == met.end()) printer.add(key, *edit.value);
  }
  printer.close();
}

void print_array(Value array, const Patch& patch, std::string& out) {
  ContainerPrinter printer(array, out);
  std::size_t position = 0;
  for (const Value child : array.children()) {
    const auto edit = patch.items.find(position++);
    printer.keep(child, [&] {
      if (edit == patch.items.end())
        out += child.source();
      else
        print_patched(child, edit->second, out);
    });
  }
  for (const Json& item : patch.appended) printer.add("", item);
  printer.close();
}

}  // namespace

Patch& Patch::member(std::string_view key) {
  for (auto& [name, patch] : members) {
    if (name == key) return patch;
  }
  return members.emplace_back(key, Patch{}).second;
}

const Patch* Patch::find(std::string_view key) const {
  for (const auto& [name, patch] : members) {
    if (name == key) return &patch;
  }
  return nullptr;
}

void print_patched(Value value, const Patch& patch, std::string& out) {
  if (patch.value)
    print_line(*patch.value, out);
  else if (value.is(Kind::object))
    print_object(value, patch, out);
  else if (value.is(Kind::array))
    print_array(value, patch, out);
  else
    out += value.source();
}

}  // namespace ohmtrail::netlist
