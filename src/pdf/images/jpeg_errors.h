// What libjpeg reports comes here; its own functions would print and end the program.
#pragma once

#include <csetjmp>
#include <cstdio>  // jpeglib.h needs it and does not say so

#include <jpeglib.h>

#include <jerror.h>

namespace pdf {

struct JpegErrors {
  jpeg_error_mgr manager{};
  std::jmp_buf out{};
  bool hasFault = false;  // the library mended data by guessing

  /// Before the library's own 'create', which keeps both.
  template <class Jpeg>
  void attach(Jpeg& jpeg) {
    jpeg.err = jpeg_std_error(&manager);
    manager.error_exit = [](j_common_ptr j) { std::longjmp(of(j).out, 1); };
    manager.emit_message = [](j_common_ptr j, int level) {
      if (level < 0 && j->err->msg_code != JWRN_EXTRANEOUS_DATA) of(j).hasFault = true;
    };
    manager.output_message = [](j_common_ptr) {};
    jpeg.client_data = this;
  }

  /// Runs a step of the library; false when it gave up. Nothing with a destructor may live inside.
  template <class Step>
  bool attempt(Step step) {
    if (setjmp(out) != 0) return false;
    step();
    return true;
  }

 private:
  static JpegErrors& of(j_common_ptr jpeg) { return *static_cast<JpegErrors*>(jpeg->client_data); }
};

}  // namespace pdf
