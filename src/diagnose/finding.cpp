#include "ohmtrail/diagnose/finding.hpp"

namespace ohmtrail::diagnose {

std::string_view words(Severity severity) {
  switch (severity) {
    case Severity::before_further_use:
      return "before further use";
    case Severity::soon:
      return "soon";
    case Severity::improvement:
      return "improvement";
  }
  return "";
}

}  // namespace ohmtrail::diagnose
