#pragma once
/// @file
/// Where a number comes from. Constants, limits and models name a `source`; results carry a `basis`, the list of
/// those they used and of the ranges they left.

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace weldloop {

/// What kind of support a number has.
enum class source_kind {
    standard,         ///< published standard or code, read
    handbook,         ///< handbook or textbook, read
    paper,            ///< paper or report, read
    derived,          ///< follows from other sources by calculation
    stated,           ///< stated by the user
    common_practice,  ///< a fact of the trade without a source
    judgement,        ///< engineering judgement; the user must be told
    memory,           ///< recalled from a named document, not re-read; gives no passing verdict by itself
};

/// The words for a kind, as a report prints them.
[[nodiscard]] constexpr std::string_view to_text(source_kind kind)
{
    switch (kind) {
    case source_kind::standard: return "standard";
    case source_kind::handbook: return "handbook";
    case source_kind::paper: return "paper";
    case source_kind::derived: return "derived";
    case source_kind::stated: return "stated by the user";
    case source_kind::common_practice: return "common practice, no source";
    case source_kind::judgement: return "judgement";
    case source_kind::memory: return "from memory";
    }
    return "judgement";
}

/// One document and the place in it.
struct source {
    std::string_view document;                  ///< author, title or number
    std::string_view edition = {};              ///< edition or year
    std::string_view place = {};                ///< table, clause, equation or page
    source_kind kind = source_kind::judgement;  ///< what support it gives

    /// The same in every field.
    friend constexpr bool operator==(const source&, const source&) = default;
};

/// "document, edition, place (kind)".
[[nodiscard]] inline std::string to_text(const source& s)
{
    std::string out(s.document);
    if (!s.edition.empty()) out.append(", ").append(s.edition);
    if (!s.place.empty()) out.append(", ").append(s.place);
    return out.append(" (").append(to_text(s.kind)).append(")");
}

/// A range of validity that a result has left. The result stands, the flag says with what caution.
enum class range_flag : std::uint8_t {
    convection_range,        ///< convection correlation outside its Rayleigh or Reynolds range
    cable_diameter_range,    ///< cable thicker than the surface formula covers
    dimension_interpolated,  ///< cable dimensions interpolated between published sizes
    dimension_extrapolated,  ///< cable dimensions beyond the published sizes
    resistivity_range,       ///< linear temperature law of resistivity beyond its table
    relaxation_range,        ///< spring relaxation outside 20..100 degC or 0.6..0.8 of tensile strength
    spring_destroyed,        ///< spring hotter than the tempering range of its wire
    spots_melting,           ///< contact drop at the melting drop of its metals
    pair_estimated,          ///< no published force-law constant for this metal pair
    arrangement_judgement,   ///< arrangement of leads without a published surface formula
    limit_above_covering,    ///< a conductor limit was stated that lies above that of covering or strands
    strand_coat_melts,       ///< the tin of a conductor's strands melts: they stick together, the copper carries on
    crowd_assumed,           ///< number of turns of a coil or leads of a bundle not stated: a poor case assumed
    relative_trend,          ///< no validated law: shows which way and how fast against another case, not how much
};

/// What a flag says to the user.
[[nodiscard]] constexpr std::string_view to_text(range_flag flag)
{
    switch (flag) {
    case range_flag::convection_range: return "convection formula used outside its range";
    case range_flag::cable_diameter_range: return "cable surface formula used outside its diameter range";
    case range_flag::dimension_interpolated: return "cable dimensions interpolated between published sizes";
    case range_flag::dimension_extrapolated: return "cable dimensions extrapolated beyond the published sizes";
    case range_flag::resistivity_range: return "temperature law of resistivity used beyond its table";
    case range_flag::relaxation_range: return "spring relaxation extrapolated: a factor of up to 3 either way";
    case range_flag::spring_destroyed: return "spring beyond its tempering range: destroyed";
    case range_flag::spots_melting: return "contact spots melting: may weld or burn";
    case range_flag::pair_estimated: return "no published force-law constant for this metal pair: estimated";
    case range_flag::limit_above_covering: return "conductor limit stated above that of covering or strands";
    case range_flag::strand_coat_melts: return "tin of the strands melts: they stick together and the lead stays stiff";
    case range_flag::arrangement_judgement:
        return "arrangement of leads rated by judgement, in open air: not in a duct, under a mat, buried or on a drum";
    case range_flag::crowd_assumed: return "turns of the coil or leads of the bundle not stated: a poor case assumed";
    case range_flag::relative_trend: return "a relative trend: no validated law of ageing exists";
    }
    return "outside its range";
}

/// The stable text of a flag, by which programs name it: "convection_range".
[[nodiscard]] constexpr std::string_view id_text(range_flag flag)
{
    switch (flag) {
    case range_flag::convection_range: return "convection_range";
    case range_flag::cable_diameter_range: return "cable_diameter_range";
    case range_flag::dimension_interpolated: return "dimension_interpolated";
    case range_flag::dimension_extrapolated: return "dimension_extrapolated";
    case range_flag::resistivity_range: return "resistivity_range";
    case range_flag::relaxation_range: return "relaxation_range";
    case range_flag::spring_destroyed: return "spring_destroyed";
    case range_flag::spots_melting: return "spots_melting";
    case range_flag::pair_estimated: return "pair_estimated";
    case range_flag::arrangement_judgement: return "arrangement_judgement";
    case range_flag::limit_above_covering: return "limit_above_covering";
    case range_flag::strand_coat_melts: return "strand_coat_melts";
    case range_flag::crowd_assumed: return "crowd_assumed";
    case range_flag::relative_trend: return "relative_trend";
    }
    return "convection_range";
}

/// The sources and range flags behind a result. The usual few sources lie in the value itself, so that carrying it
/// takes no heap memory; there may be any number. Sources are static data of the library or of the caller and must
/// outlive the result.
class basis {
public:
    /// No sources yet. The places for them are not set before they are used, which is most of what a list would cost.
    basis() {}  // NOLINT: on purpose
    ~basis() = default;
    /// A copy. @param other any
    basis(const basis& other) : count_(other.count_), more_(other.more_), marks_(other.marks_), flags_(other.flags_)
    {
        take_first_of(other);
    }
    /// What another holds, which is then to be assigned to or destroyed only. @param other any
    basis(basis&& other) noexcept
        : count_(other.count_), more_(std::move(other.more_)), marks_(other.marks_), flags_(other.flags_)
    {
        take_first_of(other);
    }
    /// A copy. @param other any, also this
    basis& operator=(const basis& other) { return *this = basis(other); }
    /// As the constructor. @param other any but this
    basis& operator=(basis&& other) noexcept
    {
        count_ = other.count_;
        more_ = std::move(other.more_);
        marks_ = other.marks_;
        flags_ = other.flags_;
        take_first_of(other);
        return *this;
    }

    /// Adds a source once.
    basis& add(const source& s)
    {
        const std::uint64_t mark = mark_of(s);
        if ((marks_ & mark) != 0 || count_ == first_.size()) [[unlikely]]
            return add_beside(s, mark);
        marks_ |= mark;
        first_[count_++] = &s;
        return *this;
    }
    basis& add(const source&& s) = delete;  ///< a temporary would dangle

    /// Adds sources of which none is there yet: what a fresh list begins with, without looking for each.
    /// @param s sources, all different
    template <class... Sources>
    basis& add_new(const Sources&... s)
    {
        if (count_ + sizeof...(s) > first_.size()) [[unlikely]]
            return (add(s), ...);
        const source** place = first_.data() + count_;
        ((*place++ = &s), ...);
        count_ += sizeof...(s);
        marks_ = unmarked;
        return *this;
    }

    /// Raises a range flag.
    basis& add(range_flag flag)
    {
        flags_ |= bit(flag);
        return *this;
    }

    /// Takes over the sources and flags of another basis.
    basis& add(const basis& other)
    {
        if (&other == this) return *this;
        for (const source* s : other.sources()) add(*s);
        flags_ |= other.flags_;
        return *this;
    }

    /// The sources in the order of their first use.
    [[nodiscard]] std::span<const source* const> sources() const&
    {
        return more_.empty() ? std::span<const source* const>(first_.data(), count_) : more_;
    }
    [[nodiscard]] std::span<const source* const> sources() const&& = delete;
    /// Whether a flag is raised.
    [[nodiscard]] constexpr bool has(range_flag flag) const { return (flags_ & bit(flag)) != 0; }
    /// Whether a source of a kind is among them.
    [[nodiscard]] bool has(source_kind kind) const
    {
        for (const source* s : sources())
            if (s->kind == kind) return true;
        return false;
    }
    /// Every raised flag, in the order of the enumeration.
    [[nodiscard]] std::vector<range_flag> flags() const
    {
        std::vector<range_flag> out;
        for (unsigned i = 0; i < 32; ++i)
            if ((flags_ >> i) & 1U) out.push_back(static_cast<range_flag>(i));
        return out;
    }

private:
    void take_first_of(const basis& other)
    {
        for (std::size_t i = 0; i < count_; ++i) first_[i] = other.first_[i];
    }

    // Where the bit of a source is set it may be there; where the array is full the list goes on in the vector.
    [[gnu::noinline]] basis& add_beside(const source& s, std::uint64_t mark)
    {
        if (marks_ == unmarked) {
            marks_ = 0;
            for (const source* known : sources()) marks_ |= mark_of(*known);
        }
        if ((marks_ & mark) != 0)
            for (const source* known : sources())
                if (known == &s) return *this;
        marks_ |= mark;
        if (count_ < first_.size()) {
            first_[count_++] = &s;
            return *this;
        }
        if (more_.empty()) more_.assign(first_.begin(), first_.end());
        more_.push_back(&s);
        return *this;
    }
    static constexpr std::uint64_t unmarked = ~std::uint64_t{0};  // bits are not set yet: each source may be there

    // A bit by the place of a source: where it is not set yet the source is new and the others need not be asked.
    static std::uint64_t mark_of(const source& s)
    {
        constexpr unsigned bits = 64, spacing = 64;  // bytes from one to the next, about
        return std::uint64_t{1} << (reinterpret_cast<std::uintptr_t>(&s) / spacing % bits);
    }
    static constexpr std::uint32_t bit(range_flag flag) { return std::uint32_t{1} << static_cast<unsigned>(flag); }

    std::array<const source*, 16> first_;  // as long as they fit; no more of them is set than counted
    std::size_t count_ = 0;                // of those
    std::vector<const source*> more_;      // all of them, once they do not
    std::uint64_t marks_ = 0;              // of those added
    std::uint32_t flags_ = 0;
};

}  // namespace weldloop
