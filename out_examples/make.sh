#!/bin/sh
# Installs what is missing, builds, and makes the pack of every example job.
set -eu
cd "$(dirname "$0")/.."
. tests/setup.sh
install_missing tests/build_packages.txt
[ -e build/build.ninja ] || cmake --preset release -DBUILD_TESTING=OFF > /dev/null  # the tests need more packages
cmake --build --preset release --target planksheaf
rm -f out_examples/*/*/job.ics out_examples/*/compact/*/job.ics  # the days of an older one would go on in the new as cancelled
build/planksheaf pack out_examples/*/job.yaml
for job in out_examples/*/job.yaml; do
  build/planksheaf pack --theme compact "$job" -o "${job%/job.yaml}/compact"
done
echo "The packs lie in (those below 'compact' in the second look):"
ls -d "$PWD"/out_examples/*/*-*/ "$PWD"/out_examples/*/compact/*/
echo "The crew sheet of the porch comes in two languages, as its job asks:"
ls "$PWD"/out_examples/porch/*/safety*.pdf
