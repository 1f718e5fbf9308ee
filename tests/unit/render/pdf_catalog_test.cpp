#include "render/pdf_catalog.hpp"

#include <fmt/format.h>
#include <gmock/gmock.h>

// The incremental update that tells a reader the document's language (ISO 32000-1, 7.5.6).
namespace ohmtrail::render {
namespace {

using testing::HasSubstr;
using testing::StartsWith;

/// The least that has a catalogue, a table of places and a trailer.
std::string small_pdf() {
  std::string pdf = "%PDF-1.5\n1 0 obj\n<< /Type /Pages /Kids [ ] /Count 0 >>\nendobj\n";
  const std::size_t catalog = pdf.size();
  pdf += "2 0 obj\n<< /Type /Catalog\n   /Pages 1 0 R\n>>\nendobj\n";
  const std::size_t table = pdf.size();
  pdf += fmt::format(
      "xref\n0 3\n0000000000 65535 f \n0000000009 00000 n \n{:010} 00000 n \n"
      "trailer\n<< /Size 3\n   /Root 2 0 R\n   /Info 1 0 R\n>>\nstartxref\n{}\n%%EOF\n",
      catalog, table);
  return pdf;
}

/// What a reader finds that goes by the last `startxref`: the table, and in it where the object begins.
struct Found {
  std::string table, object;
};

Found found_in(const std::string& pdf) {
  const std::string key = "startxref\n";
  const std::size_t place = std::stoul(pdf.substr(pdf.rfind(key) + key.size()));
  const std::string table = pdf.substr(place);
  std::size_t line = table.find('\n') + 1;  // "2 1": from object 2 on, one entry
  line = table.find('\n', line) + 1;
  return {table, pdf.substr(std::stoul(table.substr(line, 10)))};
}

TEST(PdfCatalog, WhatStoodThereStaysByteForByte) {
  const std::string before = small_pdf();
  std::string pdf = before;
  set_language(pdf, "en");
  EXPECT_THAT(pdf, StartsWith(before));
  EXPECT_GT(pdf.size(), before.size());
  EXPECT_TRUE(pdf.ends_with("%%EOF\n"));
}

TEST(PdfCatalog, TheNewTableLeadsToTheNewCatalogue) {
  std::string pdf = small_pdf();
  const std::size_t old = std::stoul(pdf.substr(pdf.rfind("startxref\n") + 10));
  set_language(pdf, "en");
  const Found found = found_in(pdf);
  EXPECT_THAT(found.table, StartsWith("xref\n2 1\n"));
  EXPECT_THAT(found.table, HasSubstr(fmt::format("/Prev {}\n", old)));
  EXPECT_THAT(found.table, HasSubstr("/Root 2 0 R"));
  EXPECT_THAT(found.table, HasSubstr("/Info 1 0 R"));
  EXPECT_THAT(found.table, HasSubstr("/Size 3"));
  EXPECT_THAT(found.object, StartsWith("2 0 obj\n"));
  const std::string object = found.object.substr(0, found.object.find("endobj"));
  EXPECT_THAT(object, HasSubstr("/Lang (en)"));
  EXPECT_THAT(object, HasSubstr("/DisplayDocTitle true"));
  EXPECT_THAT(object, HasSubstr("/Pages 1 0 R")) << "what the catalogue said before";
}

TEST(PdfCatalog, EveryEntryOfTheTableHasTwentyBytes) {
  std::string pdf = small_pdf();
  set_language(pdf, "de");
  const std::string table = found_in(pdf).table;
  const std::size_t entry = table.find('\n', table.find('\n') + 1) + 1;
  EXPECT_EQ(table.find('\n', entry) - entry + 1, 20U) << "ISO 32000-1, 7.5.4";
}

TEST(PdfCatalog, WithoutInfoNoneIsMadeUp) {
  std::string pdf = small_pdf();
  pdf.erase(pdf.find("   /Info 1 0 R\n"), 15);
  set_language(pdf, "en");
  EXPECT_EQ(pdf.find("/Info"), std::string::npos);
  EXPECT_THAT(found_in(pdf).object, HasSubstr("/Lang (en)"));
}

TEST(PdfCatalog, AFileOfAnotherShapeIsLeftAsItIs) {
  for (const char* without : {"\ntrailer", "/Type /Catalog", "/Size ", "startxref\n", "endobj", " 0 obj"}) {
    std::string pdf = small_pdf();
    for (std::size_t at; (at = pdf.find(without)) != std::string::npos;)
      pdf.replace(at, std::string(without).size(), std::string(std::string(without).size(), ' '));
    const std::string before = pdf;
    set_language(pdf, "en");
    EXPECT_EQ(pdf, before) << without;
  }
  std::string nothing;
  set_language(nothing, "en");
  EXPECT_EQ(nothing, "");
}

}  // namespace
}  // namespace ohmtrail::render
