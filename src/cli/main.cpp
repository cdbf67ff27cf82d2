// The program: everything is in command_line.
#include "command_line.h"

int main(int argc, char **argv) { return asperity::run_command_line(argc, argv); }
