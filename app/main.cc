#include "cli/cli.h"

int main(int argc, char** argv) { return steamworthy::cli::run(argc, argv); }
