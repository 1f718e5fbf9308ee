#pragma once
#include "render/text_chapters.hpp"
#include "render/text_extras.hpp"
#include "render/text_pictures.hpp"
#include "render/text_report.hpp"
#include "render/text_risks.hpp"

/// Every word that a picture or a report says stands in these tables, so that a translation is one more set
/// of them. `{}` are filled in with names and numbers in the order given.
