#pragma once
#include <map>
#include <string>
#include <vector>

namespace ohmtrail::test {

/// What a well-formed XML text holds. Only what the pictures use: elements, attributes, text, the five
/// entities.
struct XmlSummary {
  std::string mistake;               ///< empty: well-formed
  std::map<std::string, int> count;  ///< of each element
  std::vector<std::string> titles, texts;
};

inline std::string unescaped(std::string text) {
  for (const auto& [entity, plain] :
       {std::pair{"&lt;", "<"}, {"&gt;", ">"}, {"&quot;", "\""}, {"&#39;", "'"}, {"&amp;", "&"}})
    for (std::size_t at; (at = text.find(entity)) != std::string::npos;)
      text.replace(at, std::string(entity).size(), plain);
  return text;
}

inline XmlSummary read_xml(const std::string& xml) {
  XmlSummary summary;
  std::vector<std::string> open;
  std::size_t at = 0;
  while (at < xml.size() && summary.mistake.empty()) {
    const std::size_t tag = xml.find('<', at);
    const std::string text = xml.substr(at, tag - at);
    for (std::size_t amp = text.find('&'); amp != std::string::npos; amp = text.find('&', amp + 1))
      if (text.find(';', amp) == std::string::npos || text.find(';', amp) - amp > 6)
        summary.mistake = "bare & in " + text;
    for (const char c : text)
      if (static_cast<unsigned char>(c) < 0x20 && c != '\n') summary.mistake = "control character";
    if (!open.empty() && open.back() == "title") summary.titles.push_back(unescaped(text));
    if (!open.empty() && open.back() == "text") summary.texts.push_back(unescaped(text));
    if (tag == std::string::npos) break;
    // A > inside an attribute's quotes does not end the tag; what is written escapes it anyway.
    const std::size_t end = xml.find('>', tag);
    if (end == std::string::npos) summary.mistake = "tag without end";
    const std::string inside = xml.substr(tag + 1, end - tag - 1);
    at = end + 1;
    if (inside.starts_with("?")) continue;
    if (inside.find('<') != std::string::npos) summary.mistake = "< inside a tag: " + inside;
    if (inside.starts_with("/")) {
      if (open.empty() || open.back() != inside.substr(1))
        summary.mistake = "</" + inside.substr(1) + "> closes nothing";
      else
        open.pop_back();
      continue;
    }
    const std::string name = inside.substr(0, inside.find_first_of(" /\n"));
    ++summary.count[name];
    if (!inside.ends_with("/")) open.push_back(name);
  }
  if (summary.mistake.empty() && !open.empty()) summary.mistake = "<" + open.back() + "> stays open";
  return summary;
}

}  // namespace ohmtrail::test
