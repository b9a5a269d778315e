#include "app/system/process.h"

#include <fcntl.h>
#include <signal.h>
#include <unistd.h>
#include <iostream>
#include <thread>

namespace app {
namespace {

std::mutex writing;
std::string lastWords;

bool isIgnored(int signal) {
  struct sigaction now {};
  return ::sigaction(signal, nullptr, &now) == 0 && now.sa_handler == SIG_IGN;
}

void endBy(sigset_t signals) {
  int signal = 0;
  ::sigwait(&signals, &signal);
  const std::lock_guard lock(writing);
  std::cerr << lastWords << std::flush;
  ::signal(signal, SIG_DFL);
  ::pthread_sigmask(SIG_UNBLOCK, &signals, nullptr);
  ::raise(signal);
}

}  // namespace

void guardStreams() {
  for (const int stream : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO}) {
    // The first free number is that of the closed stream, so that no file gets it. Writing to it fails.
    if (::fcntl(stream, F_GETFD) < 0) ::open("/dev/null", O_RDONLY);
  }
  ::signal(SIGPIPE, SIG_IGN);
  ::signal(SIGXFSZ, SIG_IGN);
}

void endBetweenWrites() {
  sigset_t signals;
  ::sigemptyset(&signals);
  for (const int signal : {SIGINT, SIGTERM, SIGHUP}) {
    if (!isIgnored(signal)) ::sigaddset(&signals, signal);
  }
  ::pthread_sigmask(SIG_BLOCK, &signals, nullptr);
  std::thread(endBy, signals).detach();
}

void setLastWords(const std::string& words) {
  const std::lock_guard lock(writing);
  lastWords = words;
}

std::unique_lock<std::mutex> unbroken() { return std::unique_lock(writing); }

int checkedOutput(int status) {
  if (std::cout.flush()) return status;
  std::cerr << "planksheaf: error: standard output cannot be written\n";
  return 2;
}

}  // namespace app
