#!/bin/sh
# Fails when a source folder includes a folder it must not know, or a library that belongs to another folder.
cd "$1" || exit 2
bad=0
allow() {
  case "$1" in
    base) echo "base" ;;
    model) echo "base model" ;;
    input) echo "base model input" ;;
    estimate) echo "base model estimate" ;;
    plan) echo "base model plan" ;;
    safety) echo "base model safety" ;;
    records) echo "base model records" ;;
    sheets) echo "base model sheets" ;;
    markup) echo "base markup" ;;
    typeset) echo "base markup typeset model/theme.h" ;;
    figures) echo "base model typeset figures" ;;
    pdf) echo "base typeset pdf" ;;
    ics) echo "base ics" ;;
    app) echo "base model input estimate plan records safety sheets markup typeset figures pdf ics app" ;;
  esac
}
for f in */*.h */*.cpp; do
  [ -f "$f" ] || continue
  from=${f%%/*}
  for to in $(sed -n 's/^#include "\([a-z_]*\/[a-z_0-9.]*\)".*/\1/p' "$f"); do
    case " $(allow "$from") " in
      *" ${to%%/*} "* | *" $to "*) ;;
      *) echo "$f: '$from' must not include '$to'"; bad=1 ;;
    esac
  done
done
owner() {
  found=$(grep -lE "^#include <($2)" */*.h */*.cpp 2>/dev/null | grep -v "^$1/")
  [ -z "$found" ] || { echo "only '$1' may include <$2>: $found"; bad=1; }
}
owner input 'yaml-cpp/|yaml\.h|fontconfig/'
owner sheets 'kainjow/'
owner markup 'md4c'
owner plan 'date/'
owner pdf 'hpdf|png\.h|jpeglib|zlib|libdeflate|hb-subset'
owner typeset 'hyphen\.h'
owner app 'CLI/|nlohmann/'
hb=$(grep -lE '^#include <hb(-ot)?\.h>' */*.h */*.cpp 2>/dev/null | grep -vE '^(typeset|pdf)/')
[ -z "$hb" ] || { echo "only typeset and pdf may include HarfBuzz: $hb"; bad=1; }
exit $bad
