#include "cli/study/kept_beside.h"

#include "learner/record/file/beside.h"
#include "publish/files/whole_file.h"

#include <fstream>
#include <iterator>
#include <system_error>

namespace steelyard::cli {

KeptBeside::KeptBeside(const Study& study)
    : path_(study.record.folder() /
            learner::name_beside(learner::kSessionBeside, study.learner.id)) {}

std::optional<std::string> KeptBeside::read() const {
    std::ifstream file(path_, std::ios::binary);
    if (!file)
        return std::nullopt;
    return std::string(std::istreambuf_iterator<char>(file), {});
}

void KeptBeside::write(const std::string& text) const {
    (void)publish::write_whole_file(path_, text, publish::Readers::owner);
}

void KeptBeside::forget() const {
    std::error_code ignored; // what cannot be removed cannot have been written
    std::filesystem::remove(path_, ignored);
}

} // namespace steelyard::cli
