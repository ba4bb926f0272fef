// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/LeftWorkActions.h"

#include "Bench/WorkText.h"

#include <utility>

namespace stopwright
{

LeftWorkActions::LeftWorkActions (BenchSession& session, WorkKeeper& keeper, BenchPages& pages)
    : session_ (session),
      keeper_ (keeper),
      pages_ (pages)
{}

void LeftWorkActions::askAndGoOn (std::function<void()> next)
{
    next_ = std::move (next);
    while (const auto left = keeper_.takeLeft())
    {
        try
        {
            ask (*left, parseKeptWork (left->text.toStdString()).file);
            return;
        }
        catch (const std::exception& error)
        {
            const auto aside = WorkKeeper::putAside (*left);
            session_.say (std::string (error.what()) + " (" + aside.getFullPathName().toStdString() + ")");
        }
    }
    goOn();
}

void LeftWorkActions::goOn()
{
    keeper_.begin();
    if (const auto next = std::exchange (next_, {}))
        next();
}

void LeftWorkActions::ask (const WorkKeeper::Left& left, const std::filesystem::path& file)
{
    std::vector<SheetPage::Choice> choices;
    choices.push_back ({ "Take it back", [this, left]
                         {
                             pages_.closePage();
                             takeBack (left);
                         } });
    choices.push_back ({ "Throw it away", [this, left]
                         {
                             pages_.closePage();
                             WorkKeeper::forget (left);
                             askAndGoOn (std::exchange (next_, {}));
                         } });
    choices.push_back ({ "Ask me next time", [this]
                         {
                             pages_.closePage();
                             askAndGoOn (std::exchange (next_, {}));
                         } });
    const auto name =
        file.empty() ? juce::String ("a card without a file") : juce::String::fromUTF8 (file.filename().c_str());
    pages_.showPage (std::make_unique<SheetPage> (
        "Unsaved work is here",
        "An earlier run ended before its work was saved: changes of " + name + ", kept on "
            + left.time.formatted ("%Y-%m-%d at %H:%M")
            + ". Taken back, it is open again as it was, still unsaved, and \"Undo\" goes back to what is on disk.",
        std::move (choices)));
}

void LeftWorkActions::takeBack (const WorkKeeper::Left& left)
{
    const bool isBack = session_.attempt (
        [&]
        {
            const auto kept = parseKeptWork (left.text.toStdString());
            if (! kept.file.empty())
                session_.open (kept.file);
            session_.restore (kept.work);
        });
    // What could not be taken back stays, and is asked about next time. The rest is kept anew before anything else: what
    // comes then may take its time, as a sound device that does not answer.
    if (isBack)
    {
        keeper_.begin();
        keeper_.keep();
        keeper_.finish();
        WorkKeeper::forget (left);
    }
    goOn();
}

} // namespace stopwright
