#pragma once
#include <optional>
#include <string>
#include <string_view>

#include "render/scene.hpp"

/// A scene as the bytes of a file. The same scene gives the same bytes.
namespace ohmtrail::render {

enum class FileKind { svg, png, pdf };

/// By the ending of a file's name, in either case of letters; empty for any other.
[[nodiscard]] std::optional<FileKind> file_kind(std::string_view file_name);

enum class Paper { a4, letter };

/// SVG: real text, a <title> on every group, no script. PNG: two pixels a point (fewer where the picture
/// would grow over 12 000 pixels). PDF: text selectable, fonts embedded. With `paper` the picture is fitted
/// onto that paper, landscape or portrait; where its letters would become too small to read, a PDF has an
/// overview and a page for each part (SVG and PNG: the overview), and `sheets` follow. Without, the page is
/// as large as the picture.
[[nodiscard]] std::string encode(const Scene& scene, FileKind kind, std::optional<Paper> paper = std::nullopt,
                                 const std::vector<Scene>& sheets = {});

}  // namespace ohmtrail::render
