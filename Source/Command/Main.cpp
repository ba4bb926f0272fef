// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/CommandLine.h"

#include <iostream>

int main (int argumentCount, char** arguments)
{
    return stopwright::runCommandLine (argumentCount, arguments, std::cout, std::cerr);
}
