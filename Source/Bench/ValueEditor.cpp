// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/ValueEditor.h"

#include "Bench/Lettering.h"

#include <utility>

namespace stopwright
{

ValueEditor::~ValueEditor()
{
    if (editor_ == nullptr)
        return;
    editor_->onFocusLost = nullptr;
    editor_->giveAwayKeyboardFocus(); // the window sees to it
}

void ValueEditor::open (juce::Component& owner, juce::Rectangle<int> area, Request request)
{
    if (isOpen())
        return;
    owner_ = &owner;
    request_ = std::move (request);
    editor_ = std::make_shared<juce::TextEditor>();
    owner.addAndMakeVisible (*editor_);
    editor_->setFont (Lettering::strong());
    editor_->setBorder (juce::BorderSize<int> (0));
    editor_->setTitle (request_.title);
    editor_->setText (request_.text, juce::dontSendNotification);
    editor_->onReturnKey = [this] { take(); };
    editor_->onEscapeKey = [this] { close(); };
    editor_->onFocusLost = [this] { close(); };
    setArea (area);
    if (editor_->isShowing())
        editor_->grabKeyboardFocus();
    if (request_.selectsAll)
        editor_->selectAll();
    else
        editor_->moveCaretToEnd();
}

void ValueEditor::setArea (juce::Rectangle<int> area)
{
    if (isOpen())
        editor_->setBounds (area);
}

void ValueEditor::close()
{
    if (! isOpen())
        return;
    // The editor may be in one of its own callbacks: it goes when that has returned.
    const auto editor = std::exchange (editor_, nullptr);
    editor->onFocusLost = nullptr;
    juce::MessageManager::callAsync ([editor] {});
    if (editor->hasKeyboardFocus (true) && request_.leave)
        request_.leave();
    editor->giveAwayKeyboardFocus(); // where nobody took it, the window sees to it
    owner_->removeChildComponent (editor.get());
    session_.withdraw (std::exchange (refusal_, {}));
    if (request_.closed)
        request_.closed();
}

void ValueEditor::take()
{
    session_.withdraw (std::exchange (refusal_, {}));
    const auto before = session_.sentence();
    if (request_.take (editor_->getText()))
    {
        close();
        return;
    }
    if (session_.sentence() != before)
        refusal_ = session_.sentence();
    editor_->selectAll();
}

} // namespace stopwright
