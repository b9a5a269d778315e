#include "app/commands/command_line.h"
#include "app/system/process.h"
#include "base/hidden.h"

#include <iostream>

int main(int argc, char** argv) {
  app::guardStreams();
  app::endBetweenWrites();
  try {
    return app::checkedOutput(app::runCommand(argc, argv, PLANKSHEAF_VERSION));
  } catch (const std::exception& e) {
    std::cerr << "planksheaf: error: " << base::printable(e.what(), base::Lines::Keep) << "\n";
    return 2;
  }
}
