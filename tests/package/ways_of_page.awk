# What a page on embedding tells its readers to do, as files: awk -v out=FOLDER -f ways_of_page.awk embedding.md
#
# Of each way ("### Title {#way_NAME}") FOLDER/NAME holds `packages` and `prints` (what stands in code marks after
# "Packages:" and "It prints"), `commands` (all blocks of sh) and `files/` (every other block, named by its first line).
# What stands before the first way is for all of them. A way without packages or commands ends it with status 1.

function fail(text) { print FILENAME ":" NR ": " text > "/dev/stderr"; failed = 1; exit 1 }
function marked(line) { sub(/^[^`]*`/, "", line); sub(/`[^`]*$/, "", line); return line }
function close_way() {
    if (way == "") return
    if (!has_packages) fail("the way '" way "' names no packages")
    if (!has_commands) fail("the way '" way "' has no commands")
}

/^## / { close_way(); way = ""; inside = ($0 == "## Ways to take it"); next }
!inside { next }
/^### / && !block {
    close_way()
    if (!match($0, /\{#way_[a-z_]+\}/)) fail("a way without a name")
    way = substr($0, RSTART + 6, RLENGTH - 7)
    print way
    system("mkdir -p '" out "/" way "/files'")
    if (common_name != "") printf "%s", common > (out "/" way "/files/" common_name)
    printf "%s", common_prints > (out "/" way "/prints")
    close(out "/" way "/prints")
    has_packages = has_commands = 0
    next
}
/^```/ && !block { block = substr($0, 4); first = 1; next }
/^```$/ { block = ""; if (target != "") close(target); target = ""; next }
block && first && block != "sh" {
    first = 0
    name = $2
    if (name !~ /^[A-Za-z_.]+$/) fail("a block that does not begin with the name of its file")
    if (way == "") common_name = name
    else target = out "/" way "/files/" name
    next
}
block == "sh" { print > (out "/" way "/commands"); has_commands = 1; next }
block { if (way == "") common = common $0 "\n"; else print > target; next }
match($0, /Packages: (`[^`]+`|none)/) {
    packages = substr($0, RSTART + 10, RLENGTH - 10)
    print (packages == "none" ? "" : marked(packages)) > (out "/" way "/packages")
    has_packages = 1
}
match($0, /It prints[^`]*`[^`]+`/) {
    prints = marked(substr($0, RSTART, RLENGTH))
    if (way == "") common_prints = prints "\n"
    else { print prints > (out "/" way "/prints"); close(out "/" way "/prints") }
}
END { if (failed) exit 1; close_way() }
