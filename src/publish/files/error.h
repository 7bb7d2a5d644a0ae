#pragma once
// What can go wrong between a drawing or a paper and the file that is to hold it.

#include <string>

namespace steelyard::publish {

enum class PublishFault {
    bad_size,     ///< no sheet has this size: zero, not a number, or beyond any memory
    bad_place,    ///< a place in the drawing is not a number: our own mistake upstream
    no_font,      ///< no font that could set a line of text
    cannot_write, ///< the folder is missing, forbidden or full
    no_memory,
    bad_ending, ///< the file name does not say a format that we write
    bad_paper,  ///< the paper that is asked for cannot be made
    no_tool,    ///< this edition of the program has nothing that makes it
    stopped,    ///< the person who asked for it said stop
};

struct PublishError {
    PublishFault fault = PublishFault::cannot_write;
    std::string message; ///< what happened, where, and what to do
};

} // namespace steelyard::publish
