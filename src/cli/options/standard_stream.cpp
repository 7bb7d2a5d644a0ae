#include "cli/options/standard_stream.h"

#include "cli/options/picture_options.h"

#include <istream>
#include <iterator>
#include <ostream>

namespace steelyard::cli {

std::string all_of_input(const Streams& streams) {
    return {std::istreambuf_iterator<char>(streams.in), {}};
}

ExitStatus write_out(const std::string& name, std::string_view bytes, const Streams& streams,
                     publish::Readers readers) {
    if (name == kStandardStream) {
        streams.out << bytes;
        return ExitStatus::ok;
    }
    const auto written = publish::write_whole_file(name, bytes, readers);
    if (written)
        return ExitStatus::ok;
    streams.err << written.error().message << '\n';
    return status_of(written.error());
}

} // namespace steelyard::cli
