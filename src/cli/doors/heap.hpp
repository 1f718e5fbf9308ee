#pragma once

namespace ohmtrail::cli {

/// Has what is freed kept for what is asked for next, instead of given back to the kernel, which would hand
/// it out anew page by page: of a first solve of 10⁵ elements that was a fifth, of a first reading an eighth.
void keep_freed_memory();

/// Has the heap grow over large pages, where the kernel has them: in a system of 10⁶ elements a processor
/// spends an eighth of a solve on finding small ones. Takes a gibibyte of addresses, no memory; where even
/// that is not to be had, all stays as it was.
void have_large_pages();

}  // namespace ohmtrail::cli
