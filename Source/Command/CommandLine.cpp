// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/CommandLine.h"

#include "Command/ChangesCommand.h"
#include "Command/CheckCommand.h"
#include "Command/CompassCommand.h"
#include "Command/DrawingCommand.h"
#include "Command/EffectCommand.h"
#include "Command/ExpectCommand.h"
#include "Command/GlossaryCommand.h"
#include "Command/HarmonicsCommand.h"
#include "Command/HeadroomCommand.h"
#include "Command/MaskCommand.h"
#include "Command/MatchCommand.h"
#include "Command/RenderCommand.h"
#include "Command/ResponseCommand.h"
#include "Command/SourceCommand.h"
#include "Command/TogetherCommand.h"
#include "Organ/Spelling.h"
#include "Units/Error.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>

#include <stopwright/Cautions.h>

#include <algorithm>
#include <exception>
#include <iterator>
#include <memory>
#include <new>
#include <ostream>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

namespace stopwright
{

namespace
{

constexpr const char* description =
    "Stopwright: hear, see and measure a proposed organ stop before any solder is committed.";

constexpr const char* footer = "stopwright COMMAND --help tells more about one command.\n"
                               "Exit status: 0 done, 1 bad input, 2 wrong usage.\n"
                               "Read the cautions before you work on an instrument: stopwright --cautions";

/// The program's jobs and options, ready to be filled from a command line.
class Program
{
public:
    Program() : app_ (description, "stopwright")
    {
        app_.set_version_flag ("--version", "stopwright " STOPWRIGHT_VERSION, "Print the version and exit");
        app_.add_flag ("--cautions", cautions_, "Print what to beware of when working on an instrument, and exit");
        app_.require_subcommand (0, 1);
        app_.footer (footer);

        jobs_.push_back (std::make_unique<CheckCommand>());
        jobs_.push_back (std::make_unique<ResponseCommand>());
        jobs_.push_back (std::make_unique<HarmonicsCommand>());
        jobs_.push_back (std::make_unique<DrawingCommand>());
        jobs_.push_back (std::make_unique<CompassCommand>());
        jobs_.push_back (std::make_unique<MaskCommand>());
        jobs_.push_back (std::make_unique<SourceCommand>());
        jobs_.push_back (std::make_unique<MatchCommand>());
        jobs_.push_back (std::make_unique<EffectCommand>());
        jobs_.push_back (std::make_unique<TogetherCommand>());
        jobs_.push_back (std::make_unique<HeadroomCommand>());
        jobs_.push_back (std::make_unique<ExpectCommand>());
        jobs_.push_back (std::make_unique<ChangesCommand>());
        jobs_.push_back (std::make_unique<RenderCommand>());
        jobs_.push_back (std::make_unique<GlossaryCommand>());
        for (const auto& job : jobs_)
            job->declare (app_);
    }

    ExitStatus run (int argumentCount, const char* const* arguments, std::ostream& out, std::ostream& err)
    {
        try
        {
            app_.parse (argumentCount, arguments);
        }
        catch (const CLI::ParseError& fault)
        {
            return answer (fault, out, err);
        }

        if (cautions_)
        {
            out << cautionsText;
            return ExitStatus::success;
        }
        if (const auto job = chosenJob())
            return job->run (out, err);

        err << "stopwright: say what to do: " << listedJobs() << "; stopwright --help tells more.\n";
        return ExitStatus::wrongUsage;
    }

private:
    std::string listedJobs() const
    {
        std::vector<std::string> names;
        std::ranges::transform (jobs_, std::back_inserter (names), [] (const auto& job) { return job->name(); });
        const std::vector<std::string_view> views (names.begin(), names.end());
        return listedWords (views);
    }

    Subcommand* chosenJob() const
    {
        const auto chosen = app_.get_subcommands();
        const auto isChosen = [&chosen] (const auto& job)
        { return ! chosen.empty() && job->name() == chosen.front()->get_name(); };
        const auto found = std::find_if (jobs_.begin(), jobs_.end(), isChosen);
        return found == jobs_.end() ? nullptr : found->get();
    }

    /// Help and version come as faults too.
    ExitStatus answer (const CLI::ParseError& fault, std::ostream& out, std::ostream& err) const
    {
        if (fault.get_exit_code() == static_cast<int> (CLI::ExitCodes::Success))
        {
            app_.exit (fault, out, err);
            return ExitStatus::success;
        }

        std::string sentence = fault.what();
        std::replace (sentence.begin(), sentence.end(), '\n', ' ');
        while (sentence.ends_with (' ') || sentence.ends_with ('.'))
            sentence.pop_back();
        const auto job = chosenJob();
        err << "stopwright: " << sentence << "; "
            << "stopwright " << (job != nullptr ? job->name() + " " : std::string())
            << "--help shows how to call it.\n";
        return ExitStatus::wrongUsage;
    }

    CLI::App app_;
    bool cautions_ = false;
    std::vector<std::unique_ptr<Subcommand>> jobs_;
};

ExitStatus runGuarded (int argumentCount, const char* const* arguments, std::ostream& out, std::ostream& err)
{
    try
    {
        Program program;
        std::ostringstream said; // held back, so that a command that fails half-way has told no half of its result
        const auto status = program.run (argumentCount, arguments, said, err);
        out << said.view();
        out.flush();
        if (! out)
            throw Error ("The result could not be written to standard output; is the disc full?");
        return status;
    }
    catch (const Error& fault)
    {
        err << "stopwright: " << fault.what() << '\n';
    }
    catch (const std::bad_alloc&)
    {
        err << "stopwright: There is not enough memory for this; close other programs or ask for less.\n";
    }
    catch (const std::exception& fault)
    {
        err << "stopwright: An unexpected fault stopped the program (" << fault.what() << ").\n";
    }
    return ExitStatus::badInput;
}

} // namespace

int runCommandLine (int argumentCount, const char* const* arguments, std::ostream& out, std::ostream& err)
{
    return static_cast<int> (runGuarded (argumentCount, arguments, out, err));
}

} // namespace stopwright
