// The test program; every other file here holds cases by behaviour.
#define CATCH_CONFIG_MAIN
#include <catch2/catch.hpp>
