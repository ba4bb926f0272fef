// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/ValueEditor.h"

#include "Bench/Lettering.h"

#include <utility>

namespace stopwright
{

ValueEditor::~ValueEditor()
{
    if (editor_ != nullptr)
        editor_->onFocusLost = nullptr;
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
    editor_->onReturnKey = [this]
    {
        if (request_.take (editor_->getText()))
            close();
        else
            editor_->selectAll();
    };
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
    const bool hadFocus = editor->hasKeyboardFocus (true);
    // While the editor is still there: without it the owner's first control would get the keyboard.
    if (hadFocus && request_.leave)
        request_.leave();
    owner_->removeChildComponent (editor.get());
    if (hadFocus && ! request_.leave)
        owner_->grabKeyboardFocus();
    if (request_.closed)
        request_.closed();
}

} // namespace stopwright
