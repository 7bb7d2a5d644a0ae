#include "app/workshop/show_keys.h"

#include "app/platform/key.h"

#include <utility>

namespace steelyard::app {

namespace {

/// What a key means wherever the lesson stands: those of a keyboard, and those that remotes send.
std::optional<ShowIntent> intent_of(const KeyPress& key, std::size_t steps) {
    const bool shift = (key.modifiers & key::kWithShift) != 0;
    switch (key.key) {
    case key::kPageDown:
    case key::kRight:
        return GoOn{};
    case key::kPageUp:
    case key::kLeft:
        return GoBack{};
    case key::kHome:
        return GoToStep{0};
    case key::kEnd:
        return GoToStep{steps - 1};
    case key::kEnter:
    case key::kKeypadEnter:
        return Enter{};
    case key::kBackspace:
        return TakeBack{};
    case key::kDown:
    case key::kTab:
        return MoveRow{key.key == key::kTab && shift ? -1 : 1};
    case key::kUp:
        return MoveRow{-1};
    default:
        return std::nullopt;
    }
}

/// What a letter or a sign asks for where it is a command.
struct Command {
    std::optional<ShowIntent> intent;
    ShowWish wish = ShowWish::none;
};

/// @param letter  a capital, or a sign
std::optional<Command> command_of(unsigned letter) {
    switch (letter) {
    case ' ':
        return Command{GoOn{}};
    case 'B':
    case '.':
        return Command{TurnBlank{}};
    case 'F':
        return Command{TurnFreeze{}};
    case 'R':
        return Command{TurnReveal{}};
    case 'N':
        return Command{std::nullopt, ShowWish::notes_window};
    case 'I':
        return Command{std::nullopt, ShowWish::notes_below};
    case 'U':
        return Command{std::nullopt, ShowWish::units};
    default:
        return std::nullopt;
    }
}

unsigned capital(unsigned character) {
    return character >= 'a' && character <= 'z' ? character - 'a' + 'A' : character;
}

/// Reads keys one after another, each as the lesson stands after those before it.
class Reader {
public:
    explicit Reader(const ShowModel& show) : show_(show) {}

    void read(const KeyPress& key) {
        if (key.character != 0)
            return read_character(key.character);
        const bool control = (key.modifiers & key::kWithControl) != 0;
        if (key.key == key::kEscape)
            return read_escape();
        // With Ctrl, a letter is a command also where a number may be coming.
        if (control && key.key >= key::kA && key.key <= key::kZ)
            return obey(command_of(static_cast<unsigned>(key.key)));
        if (const auto intent = intent_of(key, show_.lesson->steps.size()))
            ask(*intent);
    }

    ShowInput input() && { return std::move(input_); }

private:
    void read_character(unsigned character) {
        // What was hidden may always be shown again.
        if (const unsigned letter = capital(character);
            show_.blank && (letter == 'B' || letter == '.'))
            return ask(TurnBlank{});
        if (is_command(character))
            return obey(command_of(capital(character)));
        ask(TypeCharacter{character});
    }

    /// Letters are none while a number may be coming, nor right after others that meant nothing. A
    /// blank goes on also before a number, as remotes send it.
    bool is_command(unsigned character) const {
        if (!command_of(capital(character)) || !show_.entry.empty() ||
            show_.since_typed_s < kQuiet_s)
            return false;
        return character == ' ' || !show_.awaits_number();
    }

    void read_escape() {
        if (!show_.entry.empty())
            while (!show_.entry.empty())
                ask(TakeBack{});
        else if (show_.asks_to_leave)
            input_.wish = ShowWish::leave;
        else
            ask(AskToLeave{});
    }

    void obey(const std::optional<Command>& command) {
        if (!command)
            return;
        if (command->intent)
            return ask(*command->intent);
        ask(Stay{});
        input_.wish = command->wish;
    }

    void ask(const ShowIntent& intent) {
        update(show_, intent);
        input_.intents.push_back(intent);
    }

    ShowModel show_; ///< as it will stand
    ShowInput input_;
};

} // namespace

ShowInput read_show_keys(const ShowModel& show, const std::vector<KeyPress>& keys) {
    if (keys.empty())
        return {};
    Reader reader(show);
    for (const KeyPress& key : keys)
        reader.read(key);
    return std::move(reader).input();
}

bool letters_are_commands(const ShowModel& show) {
    return !show.awaits_number() && show.since_typed_s >= kQuiet_s;
}

} // namespace steelyard::app
