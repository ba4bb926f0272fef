// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchSession.h"

#include <juce_gui_basics/juce_gui_basics.h>

#include <functional>
#include <memory>
#include <string>

namespace stopwright
{

/// A line for typing a value, laid over what it edits: Return hands the text over and closes when it was taken, Escape
/// and a click elsewhere close it. Why a text was not taken is told until the line closes or another text is handed over,
/// unless something else was told meanwhile. The keyboard goes on to whom it belongs before the line goes: of a component
/// that has it and goes, the framework would hand it to whatever control comes first. Threading: message thread.
class ValueEditor
{
public:
    struct Request
    {
        juce::String title;
        juce::String text;
        bool selectsAll = true;
        std::function<bool (const juce::String&)> take; ///< false for what cannot be taken, which the session tells
        std::function<void()> closed;
        std::function<void()> leave; ///< hands the keyboard on, to the part or the control that was in hand
    };

    explicit ValueEditor (BenchSession& session) : session_ (session) {}

    ~ValueEditor();
    ValueEditor (const ValueEditor&) = delete;
    ValueEditor& operator= (const ValueEditor&) = delete;

    void open (juce::Component& owner, juce::Rectangle<int> area, Request request);

    bool isOpen() const noexcept { return editor_ != nullptr; }

    void setArea (juce::Rectangle<int> area);

    /// Takes nothing.
    void close();

private:
    void take();

    BenchSession& session_;
    juce::Component* owner_ = nullptr;
    Request request_;
    std::string refusal_; ///< why what was typed last could not be taken
    std::shared_ptr<juce::TextEditor> editor_;
};

} // namespace stopwright
