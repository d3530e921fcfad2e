#pragma once
/// @file
/// A sign for each kind of part, drawn within 40 by 22 units about its centre.

#include <string>
#include <string_view>
#include <variant>

#include <weldloop/circuit/station.hpp>
#include <weldloop/io/draw/svg.hpp>

namespace weldloop {

namespace detail {

/// Draws signs about a centre.
class glyph_pen {
public:
    glyph_pen(svg_drawing& on, drawing_point centre) : on_(on), centre_(centre) {}

    /// Two strands twisted round each other.
    void operator()(const cable&) const
    {
        drawing_path strands;
        for (const double side : {-11.0, 11.0}) {
            strands.to(at(-18, 0));
            for (int turn = 0; turn < 3; ++turn)
                strands.curve(at(-12 + 12 * turn, turn % 2 == 0 ? side : -side), at(-6 + 12 * turn, 0));
        }
        draw(strands);
    }
    /// A barrel and a palm with its bolt.
    void operator()(const lug&) const
    {
        box(-18, -5, 16, 10);
        draw(drawing_path()
                 .to(at(-2, -5))
                 .line(at(4, -8))
                 .line(at(18, -8))
                 .line(at(18, 8))
                 .line(at(4, 8))
                 .line(at(-2, 5)));
        on_.circle(at(10, 0), 3.5, "glyph");
    }
    /// Two bodies pressed together.
    void operator()(const contact&) const
    {
        draw(drawing_path().to(at(-16, -9)).line(at(16, -9)).line(at(10, -2)).line(at(-10, -2)).close());
        draw(drawing_path().to(at(-16, 9)).line(at(16, 9)).line(at(10, 2)).line(at(-10, 2)).close());
    }
    /// A hatched flat body.
    void operator()(const plate&) const
    {
        box(-18, -7, 36, 14);
        drawing_path hatch;
        for (const double x : {-12.0, -2.0, 8.0}) hatch.to(at(x, 7)).line(at(x + 8, -7));
        draw(hatch);
    }
    /// Jaws that bite an edge.
    void operator()(const work_connection&) const
    {
        draw(drawing_path()
                 .to(at(18, -9))
                 .line(at(-6, -9))
                 .curve(at(-16, -9), at(-16, 0))
                 .curve(at(-16, 9), at(-6, 9))
                 .line(at(18, 9)));
        draw(drawing_path()
                 .to(at(18, -9))
                 .line(at(12, -3))
                 .line(at(6, -9))
                 .to(at(18, 9))
                 .line(at(12, 3))
                 .line(at(6, 9)));
        draw(drawing_path().to(at(2, 0)).line(at(18, 0)));
    }
    /// A stud on its bar.
    void operator()(const junction&) const
    {
        on_.circle(centre_, 6.0, "glyph");
        draw(drawing_path().to(at(-18, 0)).line(at(-6, 0)).to(at(6, 0)).line(at(18, 0)));
    }
    /// A piece with its seam.
    void operator()(const workpiece&) const
    {
        box(-18, -9, 36, 18);
        drawing_path seam;
        seam.to(at(-12, 0));
        for (int k = 0; k < 4; ++k) seam.curve(at(-9 + 6 * k, -5), at(-6 + 6 * k, 0));
        draw(seam);
    }
    /// A closed box with two ends.
    void operator()(const measured_part&) const
    {
        box(-12, -9, 24, 18);
        draw(drawing_path().to(at(-18, 0)).line(at(-12, 0)).to(at(12, 0)).line(at(18, 0)));
        draw(drawing_path().to(at(-6, 3)).line(at(0, -4)).line(at(6, 3)));
    }
    /// Never drawn in a frame; see loop_drawing().
    void operator()(const arc&) const {}
    /// A bent neck with a nozzle and the wire.
    void operator()(const wire_gun&) const
    {
        draw(drawing_path().to(at(-18, -8)).line(at(-4, -8)).curve(at(4, -8), at(7, 1)));
        draw(drawing_path().to(at(2, 2)).line(at(11, -1)).line(at(14, 6)).line(at(5, 9)).close());
        draw(drawing_path().to(at(10, 8)).line(at(11, 11)));
    }
    /// A slim body with a tip.
    void operator()(const tig_torch&) const
    {
        draw(drawing_path().to(at(-16, -9)).line(at(-4, -9)).line(at(6, 1)));
        draw(drawing_path().to(at(2, 3)).line(at(9, -3)).line(at(14, 4)).line(at(9, 8)).close());
        draw(drawing_path().to(at(12, 6)).line(at(16, 10)));
    }
    /// A handle, jaws, and a rod across.
    void operator()(const electrode_holder&) const
    {
        box(-18, -5, 20, 10);
        draw(drawing_path()
                 .to(at(2, -5))
                 .line(at(14, -5))
                 .to(at(2, 5))
                 .line(at(14, 5))
                 .to(at(11, -10))
                 .line(at(11, 10)));
    }
    /// Plug in socket.
    void operator()(const coupling&) const
    {
        box(-18, -8, 18, 16);
        box(-6, -4, 24, 8);
    }

    /// A flat strap that sags between two bolts.
    void operator()(const strap&) const
    {
        draw(drawing_path().to(at(-18, -5)).line(at(-10, -5)).curve(at(0, 9), at(10, -5)).line(at(18, -5)));
        draw(drawing_path().to(at(-18, 0)).line(at(-12, 0)).curve(at(0, 14), at(12, 0)).line(at(18, 0)));
        on_.circle(at(-14, -2.5), 2.0, "glyph");
        on_.circle(at(14, -2.5), 2.0, "glyph");
    }
    /// A stud with its nut on a seat.
    void operator()(const stud_terminal&) const
    {
        draw(drawing_path().to(at(-16, 9)).line(at(16, 9)));
        box(-12, 4, 24, 4);
        box(-7, -3, 14, 7);
        draw(drawing_path().to(at(-3, -3)).line(at(-3, -10)).line(at(3, -10)).line(at(3, -3)));
    }
    /// A block with a cable in it and a screw from above.
    void operator()(const set_screw&) const
    {
        box(-8, -5, 22, 15);
        draw(drawing_path().to(at(-18, 0)).line(at(8, 0)).to(at(-18, 5)).line(at(8, 5)));
        draw(drawing_path().to(at(3, 0)).line(at(3, -10)).to(at(-1, -10)).line(at(7, -10)));
    }
    /// Two cable ends in one sleeve.
    void operator()(const cable_splice&) const
    {
        box(-10, -7, 20, 14);
        draw(drawing_path()
                 .to(at(-18, -3))
                 .line(at(-1, -3))
                 .to(at(-18, 3))
                 .line(at(-1, 3))
                 .to(at(1, -3))
                 .line(at(18, -3))
                 .to(at(1, 3))
                 .line(at(18, 3)));
    }
    /// A ring with a brush on either side.
    void operator()(const rotary_ground&) const
    {
        on_.circle(centre_, 8.0, "glyph");
        on_.circle(centre_, 3.0, "glyph");
        box(-17, -4, 9, 8);
        box(8, -4, 9, 8);
    }
    /// A pad on its support with a spring behind it.
    void operator()(const spring_pad&) const
    {
        draw(drawing_path().to(at(-16, 10)).line(at(16, 10)));
        box(-10, 4, 20, 6);
        draw(drawing_path()
                 .to(at(0, 4))
                 .line(at(-6, 2))
                 .line(at(6, -1))
                 .line(at(-6, -4))
                 .line(at(6, -7))
                 .line(at(0, -9)));
        draw(drawing_path().to(at(-10, -9)).line(at(10, -9)));
    }
    /// A horseshoe on its work.
    void operator()(const work_magnet&) const
    {
        draw(drawing_path()
                 .to(at(-11, 7))
                 .line(at(-11, -2))
                 .curve(at(-11, -10), at(0, -10))
                 .curve(at(11, -10), at(11, -2))
                 .line(at(11, 7))
                 .line(at(5, 7))
                 .line(at(5, -2))
                 .curve(at(5, -4), at(0, -4))
                 .curve(at(-5, -4), at(-5, -2))
                 .line(at(-5, 7))
                 .close());
        draw(drawing_path().to(at(-18, 10)).line(at(18, 10)));
    }

private:
    [[nodiscard]] drawing_point at(double x, double y) const { return {centre_.x + x, centre_.y + y}; }
    void draw(const drawing_path& p) const { on_.path(p.d(), "glyph"); }
    void box(double x, double y, double width, double height) const
    {
        on_.rectangle({at(x, y), width, height}, "glyph", 1.5);
    }

    svg_drawing& on_;
    drawing_point centre_;
};

}  // namespace detail

/// Draws the sign of a part. @param on the drawing @param part the part @param centre of the sign
inline void draw_glyph(svg_drawing& on, const path_part& part, drawing_point centre)
{
    std::visit(detail::glyph_pen(on, centre), part);
}

}  // namespace weldloop
