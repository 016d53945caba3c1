// Fontconfig and Pango keep their caches until the process ends; the leak sanitizer is told so.
// They are not ours to free, and nothing of ours hides behind these names.
extern "C" const char* __lsan_default_suppressions();
extern "C" const char* __lsan_default_suppressions() {
  return "leak:libfontconfig\nleak:libpango\nleak:libcairo\nleak:libglib\n";
}
