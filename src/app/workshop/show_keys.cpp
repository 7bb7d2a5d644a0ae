#include "app/workshop/show_keys.h"

#include <GLFW/glfw3.h>

#include <algorithm>

namespace steelyard::app {

namespace {

/// What a key means wherever the lesson stands.
std::optional<ShowIntent> intent_of(const KeyPress& key, std::size_t steps) {
    const bool shift = (key.modifiers & GLFW_MOD_SHIFT) != 0;
    switch (key.key) {
    case GLFW_KEY_PAGE_DOWN:
    case GLFW_KEY_RIGHT:
        return GoOn{};
    case GLFW_KEY_PAGE_UP:
    case GLFW_KEY_LEFT:
        return GoBack{};
    case GLFW_KEY_HOME:
        return GoToStep{0};
    case GLFW_KEY_END:
        return GoToStep{steps - 1};
    case GLFW_KEY_F5: // of some remotes it starts and ends by turns; while shown it starts anew
        return shift ? std::nullopt : std::optional<ShowIntent>(GoToStep{0});
    case GLFW_KEY_ENTER:
    case GLFW_KEY_KP_ENTER:
        return Enter{};
    case GLFW_KEY_BACKSPACE:
        return TakeBack{};
    case GLFW_KEY_DOWN:
    case GLFW_KEY_TAB:
        return MoveRow{key.key == GLFW_KEY_TAB && shift ? -1 : 1};
    case GLFW_KEY_UP:
        return MoveRow{-1};
    default:
        return std::nullopt;
    }
}

/// Letters and signs that are commands while no number is being typed.
struct Command {
    std::optional<ShowIntent> intent;
    ShowWish wish = ShowWish::none;
};

std::optional<Command> command_of(unsigned character) {
    switch (character) {
    case ' ':
        return Command{GoOn{}};
    case 'b':
    case 'B':
    case '.':
        return Command{TurnBlank{}};
    case 'f':
    case 'F':
        return Command{TurnFreeze{}};
    case 'r':
    case 'R':
        return Command{TurnReveal{}};
    case 'n':
    case 'N':
        return Command{std::nullopt, ShowWish::notes_window};
    case 'i':
    case 'I':
        return Command{std::nullopt, ShowWish::notes_below};
    case 'u':
    case 'U':
        return Command{std::nullopt, ShowWish::units};
    default:
        return std::nullopt;
    }
}

void read_character(unsigned character, bool number_wanted, bool& typing, ShowInput& input) {
    const auto command = typing ? std::nullopt : command_of(character);
    if (!command) {
        input.intents.emplace_back(TypeCharacter{character});
        typing = typing || (number_wanted && character >= '0' && character <= '9');
    } else if (command->intent) {
        input.intents.push_back(*command->intent);
    } else {
        input.wish = command->wish;
    }
}

} // namespace

ShowInput read_show_keys(const ShowModel& show, const std::vector<KeyPress>& keys) {
    ShowInput input;
    const bool number_wanted =
        show.lesson_step().prediction.kind == setup::PredictionKind::number && !show.now().revealed;
    // An entry that has begun takes letters and signs: "15 lb".
    bool typing = number_wanted && !show.entry.empty();
    for (const KeyPress& key : keys) {
        if (key.character != 0) {
            read_character(key.character, number_wanted, typing, input);
        } else if (key.key == GLFW_KEY_ESCAPE && typing) {
            input.intents.insert(input.intents.end(), show.entry.size(), TakeBack{});
        } else if (key.key == GLFW_KEY_ESCAPE) {
            input.wish = ShowWish::leave;
        } else if (const auto intent = intent_of(key, show.lesson->steps.size())) {
            input.intents.push_back(*intent);
            typing = typing && key.key == GLFW_KEY_BACKSPACE;
        }
    }
    return input;
}

} // namespace steelyard::app
