#include "allocations.h"

#include <atomic>
#include <cstdlib>
#include <new>

namespace {

std::atomic<long> taken{0};

void* take(std::size_t size) {
    ++taken;
    void* const block = std::malloc(size == 0 ? 1 : size);
    if (block == nullptr)
        throw std::bad_alloc();
    return block;
}

void* take(std::size_t size, std::align_val_t alignment) {
    ++taken;
    const auto step = static_cast<std::size_t>(alignment);
    void* const block = std::aligned_alloc(step, (size + step - 1) / step * step);
    if (block == nullptr)
        throw std::bad_alloc();
    return block;
}

} // namespace

void* operator new(std::size_t size) {
    return take(size);
}
void* operator new[](std::size_t size) {
    return take(size);
}
void* operator new(std::size_t size, std::align_val_t alignment) {
    return take(size, alignment);
}
void* operator new[](std::size_t size, std::align_val_t alignment) {
    return take(size, alignment);
}
// The sanitizers want every new to be the partner of the deletes below, this one too.
void* operator new(std::size_t size, const std::nothrow_t& /*tag*/) noexcept {
    ++taken;
    return std::malloc(size == 0 ? 1 : size);
}
void operator delete(void* block) noexcept {
    std::free(block);
}
void operator delete[](void* block) noexcept {
    std::free(block);
}
void operator delete(void* block, std::size_t) noexcept {
    std::free(block);
}
void operator delete[](void* block, std::size_t) noexcept {
    std::free(block);
}
void operator delete(void* block, std::align_val_t) noexcept {
    std::free(block);
}
void operator delete[](void* block, std::align_val_t) noexcept {
    std::free(block);
}
void operator delete(void* block, std::size_t, std::align_val_t) noexcept {
    std::free(block);
}
void operator delete[](void* block, std::size_t, std::align_val_t) noexcept {
    std::free(block);
}

namespace steelyard {

long allocations() {
    return taken.load();
}

} // namespace steelyard
