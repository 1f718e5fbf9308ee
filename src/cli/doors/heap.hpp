#pragma once

namespace ohmtrail::cli {

/// Has what is freed kept for what is asked for next, instead of given back to the kernel, which would hand
/// it out anew page by page: of a first solve of 10⁵ elements that was a fifth, of a first reading an eighth.
void keep_freed_memory();

}  // namespace ohmtrail::cli
