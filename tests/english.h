// The English words that come with the program.
#pragma once

#include "input/read.h"

#include <stdexcept>

inline const base::Language& english() {
  static const base::Language language = [] {
    base::Diagnostics messages;
    auto read = input::readLanguage(std::string(SOURCE_DIR) + "/content/languages/en.yaml", "en", nullptr, {},
                                    messages);
    if (!messages.ok()) throw std::runtime_error(base::format(messages.all().front()));
    return read;
  }();
  return language;
}
