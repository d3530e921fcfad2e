#!/bin/sh
# cases.sh PROGRAM REPOSITORY CASE: runs the program as a user would and looks at status, words and files.
set -u
program=$1
stations=$2/examples/stations
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
cd "$folder" || exit 1
faults=0

fault() {
    echo "FAULT: $*"
    faults=$((faults + 1))
}
# run STATUS ARGUMENT...: what it says is in said and complained
run() {
    wanted=$1
    shift
    "$program" "$@" >said 2>complained
    got=$?
    [ "$got" -eq "$wanted" ] || fault "status $got, not $wanted, of: $* -- $(head -c 300 complained)"
}
says() { grep -qF -- "$1" said || fault "it does not say: $1"; }
says_not() { ! grep -qF -- "$1" said || fault "it says: $1"; }
complains() { grep -qF -- "$1" complained || fault "it does not complain: $1 -- but: $(head -c 300 complained)"; }
is_quiet() { [ ! -s complained ] || fault "it complains: $(head -c 300 complained)"; }
there() { for f; do [ -s "$f" ] || fault "no file $f"; done; }
not_there() { for f; do [ ! -e "$f" ] || fault "a file $f"; done; }
files_in() { [ "$(find "$1" -type f | wc -l)" -eq "$2" ] || fault "not $2 files in $1: $(ls "$1")"; }

demo() {
    run 0 "$stations/gate_shop.toml" --out made
    is_quiet
    says "Gate shop, bench 1"
    says "made/gate_shop.html"
    there made/gate_shop.json made/gate_shop.html
    files_in made 3
    cp said first
    run 0 assess "$stations/gate_shop.toml" --out made
    cmp -s said first || fault "the word assess and the bare file say different things"
    files_in made 3
    run 0 assess "$stations/gate_shop.toml" "$stations/trailer_frame.toml" --out made
    says "Trailer stand"
    there made/trailer_frame.json
}

words() {
    run 2
    complains "help [WORD]"
    run 0 help
    is_quiet
    says "assess STATION.toml"
    for word in assess fault lead chart card sheet survey trend; do
        run 0 help $word
        says "weldloop_station $word"
        cp said by_help
        run 0 $word --help
        cmp -s said by_help || fault "help $word and $word --help differ"
    done
    run 2 help asess
    complains 'nearest: assess'
    run 2 asess
    complains 'nearest: assess'
    run 2 zzz
    complains '"zzz" is no word'
    ! grep -q nearest complained || fault "something is near zzz"
    run 2 assess
    run 2 assess missing.toml
    complains "there is no such file"
    run 2 assess --uot x
    complains "nearest: --out"
    run 2 assess --out
    complains "lacks its value"
    run 2 assess --out a --out b x.toml
    complains "twice"
    run 2 lead something --length "1 m"
    mkdir empty
    run 2 empty
    complains "is a folder"
}

closed_output() {
    for call in "assess $stations/trailer_frame.toml --out made" "help" "help lead" "chart --out made" \
        "lead --length 40ft --current 230A" "fault $stations/trailer_readings.toml"; do
        # shellcheck disable=SC2086  # words
        "$program" $call >/dev/full 2>complained
        [ $? -eq 1 ] || fault "status of $call with nobody to hear it"
        complains "standard output cannot be written to"
    done
    if [ -d made ] && [ -n "$(ls made)" ]; then fault "written, but never said: $(ls made)"; fi
    run 1 assess "$stations/trailer_frame.toml" --out said/below # a file stands where the folder should
    complains "not written"
}

# the stand with its clamp on paint: no current at all
open_station() { sed 's/^surface = "clean".*/surface = "painted, unbroken"/' "$stations/trailer_frame.toml"; }

statuses() {
    run 0 assess "$stations/gate_shop.toml" --out made
    run 3 assess "$stations/gate_shop.toml" --out made --judge
    run 0 assess "$stations/trailer_frame.toml" --out made --judge
    run 3 assess "$stations/trailer_frame.toml" "$stations/gate_shop.toml" --out made --judge
    open_station >open.toml
    run 0 assess open.toml --out made
    says "open circuit"
    complains "open.toml: "
    run 3 assess open.toml --out made --judge
    run 0 fault "$stations/trailer_readings.toml"
    run 3 fault "$stations/trailer_readings.toml" --judge
    sed '/^\[\[reading\]\]/,$d' "$stations/trailer_readings.toml" >failing.toml
    printf '[[reading]]\nacross = "clamp lug"\nvolts = "0.35 V"\ncurrent = "123 A"\n' >>failing.toml
    run 3 fault failing.toml --judge
    says "Stop the job: clamp lug may be failing"
    run 3 assess failing.toml --out made --judge
    says "clamp lug may be failing"
    printf 'name = "x"\n' >bad.toml
    run 2 assess bad.toml --out made
    complains "bad.toml:1:1"
    not_there made/bad.json
    mkdir "made/taken.html" && mkdir "made/taken.html/inside"
    cp "$stations/trailer_frame.toml" taken.toml
    run 0 assess taken.toml --out made
    there made/taken-2.html made/taken-2.json
    not_there made/taken.json
}

names() {
    cp "$stations/trailer_frame.toml" "a b.toml"
    cp "$stations/gate_shop.toml" a_b.toml
    run 0 assess "a b.toml" a_b.toml --out made
    grep -q "Trailer stand" made/a_b.json || fault "a b.toml is not in a_b.json"
    grep -q "Gate shop" made/a_b-2.json || fault "a_b.toml is not in a_b-2.json"
    run 0 assess a_b.toml --out made
    says "a_b-2.json"
    grep -q "Trailer stand" made/a_b.json || fault "the other station's report was written over"
    files_in made 5
    mkdir other
    cp "$stations/gate_two_clamps.toml" other/a_b.toml
    run 0 assess other/a_b.toml --out made
    says "a_b-3.json"
    echo mine >made/c.json
    cp "$stations/trailer_frame.toml" c.toml
    run 0 assess c.toml --out made
    [ "$(cat made/c.json)" = mine ] || fault "a file that is no report was written over"
    echo '[]' >made/written.json
    run 1 assess c.toml --out made
    complains "written.json"
}

lead() {
    run 0 lead --length "40 ft" --current "230 A" --duty "60 %" --air "93 degF" --both
    is_quiet
    says "smallest size that does: 2 AWG"
    run 0 lead --length "40 ft" --current "230 A" --duty continuous
    run 2 lead --length "40 ft"
    complains "lead needs --current"
    run 2 lead --length "40 '" --current "230 A"
    complains "nearest: ft"
    run 2 lead --length "40 ft" --current "230 amps"
    complains "nearest: A"
    run 2 lead --length "40 ft" --current "230 A" --duty 0.6
    complains "a unit after the number: %; write 60 %"
    run 2 lead --length "40 ft" --current "230 A" --duty "120 %"
    complains "above 0 % to 100 %"
    run 2 lead --length "9,1 m" --current "230 A"
    complains "write 9.1 m"
    run 2 lead --length "40 ft" --current "230 A" --period "10 min"
    run 2 lead --length "40 ft" --current "230 A" --sizes metrik
    complains "nearest: metric"
    run 2 lead --length "900 m" --current "900 A"
    complains "beyond the largest"
    run 2 lead --length "10 m" --current "2500 A"
    complains "side by side"
    ! grep -q "[2-9][0-9][0-9] degC" complained || fault "a temperature no lead lives to"
    run 0 lead --length "50 ft" --current "200 A" # in the units it is asked in
    says "50 ft one way"
    says "degF"
    says "limit 185 degF"
    says "half of the 4 V"
    says "of 2 V allowed"
    [ "$(wc -L <said)" -le 100 ] || fault "a line of $(wc -L <said) letters"
    run 0 lead --length "50 ft" --current "200 A" --both
    says "of 4 V allowed"
    run 0 lead --length "10 m" --current "200 A" --air "-30 degC" --covering pvc
    says "may crack"
    run 0 lead --length "10 m" --current "200 A" --air "-20 degC"
    says_not "may crack"
}

chart() {
    run 0 chart --duty "60 %" --out made
    is_quiet
    says "2/0 AWG"
    there made/leads.html
    run 0 chart --duty "60 %" --out made
    files_in made 2
    run 0 chart --duty "35 %" --sizes metric --out made # another chart takes no chart's place
    there made/leads-2.html
    run 0 chart --lengths ft --air "86 degF" --out feet
    grep -q "longest lead in ft" feet/leads.html || fault "the chart is not in feet"
    grep -q "air 86 degF" feet/leads.html || fault "the chart is not in degF"
    run 2 chart --lengths feet
    complains "nearest: ft"
}

fault_word() {
    run 0 fault "$stations/trailer_readings.toml"
    is_quiet
    says "At fault: work terminal"
    says "locked against switching"
    run 2 fault "$stations/gate_shop.toml"
    complains "[[reading]]"
}

card() {
    run 0 card "$stations/gate_shop.toml" --out made
    is_quiet
    says "40 Nm on the M10"
    says "Put work clamp on the part"
    there made/gate_shop-card.html
    run 0 card "$stations/trailer_readings.toml" --out made # says how it is used
    says "Screw clamp, 300 A"
    run 2 card
    run 2 card a b
}

sheet() {
    run 0 sheet "$stations/gate_shop.toml" --out made
    is_quiet
    says "mV at ______ A"
    there made/gate_shop-sheet.html
    open_station >open.toml
    run 0 sheet open.toml --out made
    says "Nothing is to be expected"
}

survey() {
    mkdir shop
    cp "$stations/gate_shop.toml" "$stations/trailer_frame.toml" "$stations/trailer_readings.toml" shop
    echo 'name = ' >shop/broken.toml
    run 2 survey shop --out made
    complains "broken.toml:1:"
    says "broken.toml: not read"
    says "1  Gate shop, bench 1"
    says "2  Trailer stand, half a year on"
    says "3  Trailer stand (trailer_frame.toml)"
    there made/survey.csv made/survey.html
    [ "$(wc -l <made/survey.csv)" -eq 5 ] || fault "not five lines in the table"
    rm shop/broken.toml
    run 0 survey shop --out made
    run 3 survey shop --out made --judge
    files_in made 3
    rm shop/gate_shop.toml shop/trailer_readings.toml
    run 0 survey shop --out made --judge
    mkdir none
    run 2 survey none
    complains "no station file"
    run 2 survey missing
    complains "cannot be read as a folder"
    run 2 survey "$stations/gate_shop.toml"
    complains "survey reads a folder"
    for word in assess card sheet fault; do
        run 2 $word shop
        complains "is a folder, not a file"
    done
    : >taken
    for out in taken report.html made.json; do
        for call in "assess $stations/trailer_frame.toml" "card $stations/trailer_frame.toml" "chart" "survey shop"; do
            # shellcheck disable=SC2086  # words
            run 2 $call --out $out
            complains "--out names a folder"
            [ ! -s said ] || fault "it says something before it refuses"
        done
    done
    not_there report.html made.json
}

trend() {
    run 0 trend "$stations/trailer_frame.toml" "$stations/trailer_frame.toml" --out made
    is_quiet
    says "alike"
    ! grep -q worse said || fault "a station is worse than itself"
    sed '0,/^name = "clamp lug"/s//name = "lug of the clamp"/' "$stations/trailer_frame.toml" >renamed.toml
    run 0 trend "$stations/trailer_frame.toml" renamed.toml --out made
    says "lug of the clamp         new"
    says "clamp lug                gone"
    there made/renamed-trend.html
    run 0 trend "$stations/trailer_frame.toml" "$stations/trailer_readings.toml" --out made
    says "Spans of parts"
    says "hottest, as read: - -> 40 degC"
    says "The two files name two stations"
    sed 's/^name = "\(.*\)"/name = "other \1"/' "$stations/trailer_frame.toml" >other.toml
    run 2 trend "$stations/trailer_frame.toml" other.toml --out made
    complains "no part of one name and kind in common"
    run 2 trend one.toml
    run 2 trend "$stations/trailer_frame.toml" missing.toml
    complains "there is no such file"
}

# What is no file is refused before it is read: a pipe that nobody writes to never ends, a device never stops.
no_file() {
    mkfifo pipe.toml
    for word in assess fault card sheet; do
        for input in pipe.toml /dev/zero /dev/null; do
            timeout 20 "$program" $word $input >said 2>complained
            [ $? -eq 2 ] || fault "status of $word $input"
            complains "a pipe or a device, not a file"
        done
        run 2 $word "$folder"
        complains "is a folder"
    done
    mkdir shop
    mkfifo shop/pipe.toml
    timeout 20 "$program" survey shop --out made >said 2>complained
    [ $? -eq 2 ] || fault "status of a survey with a pipe"
    for input in pipe.toml /dev/zero; do
        timeout 20 "$program" trend $input "$stations/trailer_frame.toml" >said 2>complained
        [ $? -eq 2 ] || fault "status of trend $input"
        complains "a pipe or a device, not a file"
        timeout 20 "$program" trend "$stations/trailer_frame.toml" $input >said 2>complained
        [ $? -eq 2 ] || fault "status of trend with $input behind"
        timeout 60 "$program" card "$stations/trailer_frame.toml" --out $input >said 2>complained
        [ $? -eq 2 ] || fault "status of card --out $input"
    done
    run 2 trend "$folder" "$stations/trailer_frame.toml"
    complains "is a folder"
    cp "$stations/trailer_frame.toml" closed.toml
    chmod 000 closed.toml
    [ -r closed.toml ] && return 0 # root reads it all the same
    for word in assess fault card sheet; do
        run 2 $word closed.toml
        complains "closed.toml"
    done
}

# no control character but ends of lines, none of the second set, none that turns the direction of the text around it
steers_not() {
    escape=$(printf '\033')
    second=$(printf '\302[\200-\237]')
    turned=$(printf '\342\200[\216\217\250-\256]|\342\201[\246-\257]|\330\234')
    for f; do
        [ -s "$f" ] || fault "$f is empty"
        ! LC_ALL=C grep -qE "$escape|$second|$turned" "$f" || fault "$f steers: $(LC_ALL=C grep -aE "$escape|$second|$turned" "$f" | head -c 200 | od -c | head -5)"
        ! LC_ALL=C tr -d '\n' <"$f" | LC_ALL=C grep -qE '[[:cntrl:]]' || fault "$f holds a control character"
    done
}

# Names are whatever somebody wrote: they turn no text round and colour no terminal, in no document.
steering() {
    turns=$(printf 'left\342\200\256thgir')
    sed "s/^name = \"/&$turns /" "$stations/trailer_readings.toml" >turning.toml
    for word in assess fault card sheet; do
        run 2 $word turning.toml
        complains "control character"
        steers_not complained
    done
    # escape sequences: refused in a file, shown as what they are not in a call
    printf 'name = "\\u001b[31mred"\n' >red.toml
    run 2 assess red.toml --out none
    steers_not complained
    printf 'name = "\033[31mred"\n' >raw.toml
    run 2 assess raw.toml --out none
    steers_not complained
    file=$(printf 'a\033[31m\302\233\342\200\256.toml')
    cp "$stations/trailer_frame.toml" "$file"
    run 0 assess "$file" --out by_name
    steers_not said by_name/*
    echo broken >"$file"
    run 2 assess "$file"
    steers_not complained
    run 2 "$(printf 'x\033[31m\342\200\256')"
    steers_not complained
    run 2 assess "$(printf -- '--x\033[31m')"
    steers_not complained
    run 2 lead --length "$(printf '40 ft\033[2J')" --current "230 A"
    steers_not complained
}

case "$3" in
    fault) fault_word ;;
    *) "$3" ;;
esac
[ "$faults" -eq 0 ]
