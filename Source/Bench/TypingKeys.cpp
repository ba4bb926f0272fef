// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/TypingKeys.h"

#include <algorithm>

namespace stopwright
{

void TypingKeys::setCompass (int lowestKey, int highestKey)
{
    lowestKey_ = lowestKey;
    highestKey_ = highestKey;
    base_ = std::clamp (base_, lowestKey - lowestKey % 12, std::max (lowestKey, highestKey - highestKey % 12));
}

char TypingKeys::characterFor (int key) const noexcept
{
    const int place = key - base_;
    return place >= 0 && place < static_cast<int> (characters.size()) ? characters[static_cast<std::size_t> (place)]
                                                                      : '\0';
}

bool TypingKeys::update (bool mayPress)
{
    bool isOurs = false;
    for (std::size_t index = 0; index < characters.size(); ++index)
    {
        const bool isDown =
            juce::KeyPress::isKeyCurrentlyDown (characters[index])
            || juce::KeyPress::isKeyCurrentlyDown (juce::CharacterFunctions::toUpperCase (characters[index]));
        const bool wasDown = sounding_[index] != none;
        if (isDown && ! wasDown && mayPress)
        {
            // The key is remembered, so that it is let go even when the octave was moved meanwhile.
            const int key = base_ + static_cast<int> (index);
            if (key < lowestKey_ || key > highestKey_)
                continue;
            sounding_[index] = key;
            hands_.press (key, KeyHands::Hand::typing);
            isOurs = true;
        }
        else if (! isDown && wasDown)
        {
            hands_.release (sounding_[index], KeyHands::Hand::typing);
            sounding_[index] = none;
            isOurs = true;
        }
    }
    return isOurs;
}

bool TypingKeys::takeOctaveKey (const juce::KeyPress& key)
{
    if (key.getModifiers().isCommandDown() || key.getModifiers().isAltDown())
        return false;
    const auto character = juce::CharacterFunctions::toLowerCase (key.getTextCharacter());
    if (character != 'n' && character != 'm')
        return false;
    const int moved = base_ + (character == 'm' ? 12 : -12);
    if (moved <= highestKey_ && moved + 11 >= lowestKey_)
        base_ = moved;
    return true;
}

void TypingKeys::releaseAll()
{
    for (auto& key : sounding_)
    {
        if (key != none)
            hands_.release (key, KeyHands::Hand::typing);
        key = none;
    }
}

} // namespace stopwright
