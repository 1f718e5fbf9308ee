#include "render/pdf_catalog.hpp"

#include <fmt/format.h>

#include <cctype>

namespace ohmtrail::render {
namespace {

/// The text between `key` and the next `end` after `from`; empty where either is missing.
std::string between(const std::string& pdf, std::size_t from, const std::string& key,
                    const std::string& end) {
  const std::size_t start = pdf.find(key, from);
  if (start == std::string::npos) return {};
  const std::size_t stop = pdf.find(end, start + key.size());
  return stop == std::string::npos ? std::string()
                                   : pdf.substr(start + key.size(), stop - start - key.size());
}

/// "12" of "12 0 obj" that stands before the dictionary at `dictionary`.
std::string object_number(const std::string& pdf, std::size_t dictionary) {
  const std::size_t obj = pdf.rfind(" 0 obj", dictionary);
  if (obj == std::string::npos) return {};
  std::size_t start = obj;
  while (start > 0 && std::isdigit(static_cast<unsigned char>(pdf[start - 1]))) --start;
  return pdf.substr(start, obj - start);
}

}  // namespace

void set_language(std::string& pdf, const std::string& language) {
  const std::size_t trailer = pdf.rfind("\ntrailer"), catalog = pdf.rfind("/Type /Catalog");
  if (trailer == std::string::npos || catalog == std::string::npos || catalog > trailer) return;
  const std::size_t opening = pdf.rfind("<<", catalog);
  const std::string body = between(pdf, opening, "<<", "endobj");
  const std::string number = object_number(pdf, opening);
  const std::string size = between(pdf, trailer, "/Size ", "\n"),
                    info = between(pdf, trailer, "/Info ", "\n");
  const std::string previous = between(pdf, trailer, "startxref\n", "\n");
  if (body.empty() || number.empty() || size.empty() || previous.empty()) return;
  const std::size_t at = pdf.size();
  const std::string object =
      fmt::format("{} 0 obj\n<< /Lang ({}) /ViewerPreferences << /DisplayDocTitle true >>{}endobj\n", number,
                  language, body);
  pdf += object;
  pdf += fmt::format("xref\n{} 1\n{:010} 00000 n \ntrailer\n<< /Size {}\n   /Root {} 0 R\n", number, at, size,
                     number);
  if (!info.empty()) pdf += fmt::format("   /Info {}\n", info);
  pdf += fmt::format("   /Prev {}\n>>\nstartxref\n{}\n%%EOF\n", previous, at + object.size());
}

}  // namespace ohmtrail::render
