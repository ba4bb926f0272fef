// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BenchApplication.h"
#include "Bench/CommandWords.h"
#include "Bench/DisplayCheck.h"

#include <iostream>
#include <vector>

namespace
{

stopwright::CommandWords words; // the framework calls the function below without any argument

juce::JUCEApplicationBase* createApplication()
{
    return new stopwright::BenchApplication (words);
}

} // namespace

int main (int argumentCount, char* arguments[])
{
    words = stopwright::readCommandWords (argumentCount, arguments);
    if (words.exitStatus)
    {
        (*words.exitStatus == 0 ? std::cout : std::cerr) << words.text;
        return *words.exitStatus;
    }
    if (! stopwright::hasDisplay())
    {
        std::cerr
            << "stopwright-bench: no display answers, so no window can be opened; set DISPLAY to one that does, or "
               "use the program \"stopwright\", which needs none.\n";
        return 1;
    }
    juce::JUCEApplicationBase::createInstance = createApplication;
    std::vector<const char*> constant (arguments, arguments + argumentCount);
    return juce::JUCEApplicationBase::main (argumentCount, constant.data());
}
