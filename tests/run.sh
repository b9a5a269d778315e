#!/bin/sh
# Installs what is missing, builds, and runs every test, the cases also under AddressSanitizer and UBSan.
set -eu
cd "$(dirname "$0")/.."
. tests/setup.sh
install_missing tests/build_packages.txt tests/test_packages.txt
cmake --preset release -DBUILD_TESTING=ON > /dev/null
cmake --build --preset release
cmake --preset sanitize > /dev/null
cmake --build --preset sanitize
ctest --preset release -j "$(nproc)"
echo "$(build/tests --list-test-names-only | wc -l) cases, each run plain and under sanitizers, and the checks above from outside: all passed"
