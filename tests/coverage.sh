#!/bin/sh
# Says which lines of src no case runs, by file: by hand, needs gcovr (Debian) besides what tests need.
# Writes build-coverage/index.html, where each line shows.
set -eu
cd "$(dirname "$0")/.."
cmake --preset coverage > /dev/null
cmake --build --preset coverage --target tests
find build-coverage -name '*.gcda' -delete
build-coverage/tests "~for any plan*"
gcovr --root . --filter src/ --object-directory build-coverage --html-details build-coverage/index.html \
  --txt build-coverage/lines.txt --print-summary
