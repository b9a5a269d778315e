// The program among others: its streams, and how it ends when it is asked to.
#pragma once

#include <mutex>

namespace app {

/// Makes writing to a stream that was closed, to a pipe that nobody reads, or past a limit of size fail
/// instead of ending up in another file or ending the program. Comes first in main.
void guardStreams();

/// From here on SIGINT, SIGTERM and SIGHUP end the program as they usually do, but never while an 'unbroken'
/// lock lives. Comes before the first thread. One that is ignored, as under nohup, stays so.
void endBetweenWrites();

/// What a signal that ends the program prints before.
void setLastWords(const std::string& words);

/// While it lives no signal that can be caught ends the program.
std::unique_lock<std::mutex> unbroken();

/// 'status', or 2 and a message where standard output could not be written.
int checkedOutput(int status);

}  // namespace app
