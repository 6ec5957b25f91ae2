package org.varwright.problem;

import java.util.List;

/**
 * Every message about an input, by code. Placeholders are {@code {0}}, {@code {1}} …; a text says what is wrong, what is allowed and, where it helps,
 * what to try.
 */
public enum Message {
    // ---- pictures
    NOTHING_TO_DRAW("there is nothing to draw: {0}"),

    // ---- quantities
    NO_UNIT("\"{0}\" has no unit; write it with one, such as \"{1}\""),
    WRONG_UNIT("\"{0}\" has the unit \"{1}\"; allowed are {2}, as in \"{3}\""),
    NOT_A_QUANTITY("\"{0}\" is not a number with a unit; write it such as \"{1}\""),
    DECIMAL_COMMA("\"{0}\" has a decimal comma; write \"{1}\""),

    // ---- bank: positions
    POSITION_UNKNOWN("there is no position \"{0}\"; {1}"),

    // ---- json
    JSON_SYNTAX("not JSON: {0}"),
    REQUEST_MEMBER("must be {0}"),
    TASK_UNKNOWN("there is no task \"{0}\"; there are {1}"),

    // ---- bank file (bankfile)
    FILE_TOO_LARGE("the file has {0} bytes, a bank file at most {1}; is it the right file?"),
    FILE_EMPTY("the file is empty; a bank file starts with \"format: varwright/1\""),
    NOT_UTF8("the byte {0} is not UTF-8 ({1}); save the file as UTF-8"),
    NOT_UTF8_BUT_UTF16("the file is UTF-16; save it as UTF-8"),
    CONTROL_CHARACTER("the control character {0} stands here; delete it"),
    TAB_INSTEAD_OF_BLANKS("a tab stands here; replace it by blanks, YAML allows no tab in front of a key or value"),
    YAML_SYNTAX("not readable as YAML or JSON: {0}"),
    SEVERAL_DOCUMENTS("a second document starts here; one file describes one bank, so keep only one of them"),
    ANCHOR_OR_ALIAS(
            "\"{0}\" is a YAML anchor or alias, which are not read; write the value out, or in quotes if the character is meant"),
    YAML_TAG("\"{0}\" is a YAML tag, which is not read; leave it out, or put the text in quotes"),
    NESTED_TOO_DEEP("nested deeper than anything in a bank file; look for a bracket or blanks too many"),
    KEY_NOT_TEXT("a list or a mapping stands where a key should; write a key, a colon and a value"),
    DUPLICATE_KEY("the key \"{0}\" stands twice, first in line {1}; keep one of them"),
    UNKNOWN_KEY("there is no key \"{0}\" here; {1}allowed are {2}"),
    MISSING_KEY("\"{0}\" is missing; write it such as \"{0}: {1}\""),
    NO_VALUE("\"{0}\" has no value; write one such as \"{1}\" or leave the key out"),
    EXPECTED_MAPPING("found {0}; expected a mapping with keys out of {1}"),
    EXPECTED_LIST("found {0}; expected a list"),
    EXPECTED_PAIR("found {0}; expected a list of two such as \"{1}\""),
    EXPECTED_TEXT("found {0}; expected a single value such as \"{1}\""),
    EMPTY_LIST("the list is empty; at least {0} expected, such as \"{1}\""),
    NOT_A_CHOICE("\"{0}\" is not known here; {1}allowed are {2}"),
    NOT_A_COUNT("\"{0}\" is not a whole number; allowed are {1} to {2}"),
    NOT_A_NUMBER("\"{0}\" is not a number; write a plain one such as \"{1}\""),
    OUT_OF_RANGE("{0} is out of range; allowed are {1} to {2}"),
    NOT_A_RATIO("\"{0}\" is not a ratio; write primary and secondary with a colon between, such as \"8400:120\""),
    NAME_CHARACTER("\"{0}\" has {1} in it; a name is plain text without that"),
    NAME_TOO_LONG("the text has {0} characters; allowed are {1}"),
    DUPLICATE_NAME("the {0} \"{1}\" stands twice, first in line {2}; each needs its own name"),
    REPEATED_ENTRY("\"{0}\" stands twice in one list; keep it once"),
    UNKNOWN_NAME("there is no {0} \"{1}\"; {2}known are {3}"),
    EITHER_KEY("{0} stand together; keep one of them"),
    ONE_OF_KEYS("neither {0} is there; write one of them, such as \"{1}\""),
    KEYS_TOGETHER("\"{0}\" is there but not \"{1}\"; these belong together"),
    KEY_DOES_NOT_FIT("\"{0}\" does not go with {1}; {2}"),
    TOLERANCE_ORDER(
            "the tolerance runs from {0} to {1}; write the lower limit first, from -50 % to 0 %, then the upper, from 0 % to +50 %"),
    TOLERANCE_WIDE(
            "the tolerance {0} is wider than the {1} of {2}; the purchase specification counts: look at it or at the nameplate"),
    TOO_MANY_UNITS("the bank has more than {0} units; look at strings, groups and units"),

    // bank file: electrical cross-checks
    FREQUENCY_MISMATCH(
            "unit type \"{0}\" is rated {1}, the system runs at {2}; a bank needs units of its own frequency"),
    UNIT_OVERVOLTAGE(
            "the connection puts {0} on each {1} unit, {2} % of its rated {3}; allowed are 110 %: look at groups, connection and rated voltage"),
    UNIT_ABOVE_RATED(
            "the connection puts {0} on each {1} unit, {2} % of its rated {3}: allowed up to 110 %, but nothing is left for overvoltage"),
    UNIT_FAR_BELOW_RATED(
            "the connection puts only {0} on each {1} unit, {2} % of its rated {3}: it gives {4} % of its rated reactive power"),
    CAPACITANCE_IMPOSSIBLE(
            "{0} is {1} times the {2} that kvar, voltage and frequency of \"{3}\" give; allowed are 0.8 to 1.4 times: {4}"),
    CAPACITANCE_OUT_OF_TOLERANCE(
            "{0} is {1} % off the {2} of \"{3}\"; its tolerance allows {4} % to {5} %: sections may be shorted or elements out"),
    THREE_PHASE_CONNECTION(
            "unit type \"{0}\" has three phases joined in {1} inside; its stage must be \"{2}\", not \"{3}\""),
    THREE_PHASE_SERIES(
            "unit type \"{0}\" has three phases; cans stand only in parallel, so groups and strings must be 1"),
    FUSE_BELOW_UNIT(
            "fuse \"{0}\" carries {1} continuously, a \"{2}\" unit draws {3}; take a larger fuse (1.35 times is usual)"),
    FUSE_NEAR_UNIT("fuse \"{0}\" carries {1} continuously, {2} times the {3} of a \"{4}\" unit; 1.35 times is usual"),
    FUSE_VOLTAGE("fuse \"{0}\" is rated {1}, the unit that it protects has {2} on it; take a fuse for at least that"),
    FUSE_ON_INTERNALLY_FUSED("unit type \"{0}\" has internal element fuses and the stage has unit fuses too: unusual"),
    NO_FUSE_AT_ALL(
            "{0} units stand in parallel with neither unit fuses nor element fuses: one shorted unit carries its whole group's energy"),
    SENSOR_DOES_NOT_FIT("\"{0}\" can't be sensed on a stage in \"{1}\"; {2}"),
    ALARM_ABOVE_TRIP("the alarm at {0} is above the trip at {1}; an alarm comes first"),
    ALARM_AT_TRIP("alarm and trip are both {0}: no alarm will come before the trip"),
    SETTING_WITHOUT_RATIO(
            "a setting at the relay means nothing without the ratio; write \"ratio\", or \"primary: true\" if it is a primary value"),
    NO_SETTINGS("the sensor has neither alarm nor trip; its settings can't be judged"),
    MAXIMUM_BELOW_NOMINAL("the highest voltage {0} is below the nominal {1}; it must be at least that"),
    MAXIMUM_FAR_ABOVE_NOMINAL("the highest voltage {0} is {1} % of the nominal {2}: unusual"),
    UNUSUAL_FREQUENCY("{0} is neither 50 Hz nor 60 Hz"),
    WEAK_SYSTEM(
            "the short-circuit level {0} is only {1} times the bank's {2}: look at the unit, MVA and kVA are easily mistaken"),
    REACTOR_SHARE(
            "the reactor has {0} % of the stage's reactance; for {1} that is unusual: look at the unit of the inductance"),
    REACTOR_TOO_LARGE(
            "the reactor has {0} % of the stage's reactance; allowed is less than 50 %: look at the unit of the inductance"),
    NO_NEUTRAL("a stage in \"delta\" has no neutral; the reactor stands in \"line\""),
    DISCHARGE_SLOW(
            "the discharge resistor of \"{0}\" needs {1} from the peak of rated voltage to {2}; {3} asks for {4}: the wait is longer"),
    DISCHARGE_LOSS(
            "the discharge resistor of \"{0}\" would burn {1} W in a unit of {2}; look at the unit, kΩ and MΩ are easily mistaken"),
    HARMONIC_TWICE("the order {0} stands twice, first in line {1}; write voltage and current of one order together"),
    LIGHT_ABOVE_FULL("{0} at light load is above the {1} at full load; is one of them in the wrong unit or place?"),
    THRESHOLD_WITHOUT_RATIO(
            "a threshold at the control means nothing without the transformer's ratio; write \"{0}\" such as \"{1}\", or \"1:1\" if it is a primary value"),
    THRESHOLDS_EQUAL("the stage goes on and off at the same {0}; leave a band between them"),
    THRESHOLDS_ORDER(
            "by {0} the stage goes on at {1} and off at {2}: it would switch without end; \"on\" lies {3} \"off\" there"),
    SWITCH_VOLTAGE("switch type \"{0}\" is rated {1}, the system has {2}; take a switch for at least that"),
    SWITCH_BELOW_MAXIMUM("switch type \"{0}\" is rated {1}, below the highest voltage {2} of the system"),
    LINE_FUSE_VOLTAGE("line fuse \"{0}\" is rated {1} and has to interrupt against {2}; take a fuse for at least that"),
    LINE_FUSE_BELOW_STAGE(
            "line fuse \"{0}\" carries {1} continuously, the stage draws {2} at nominal voltage; take a larger fuse (1.35 times is usual)"),
    LINE_FUSE_NEAR_STAGE(
            "line fuse \"{0}\" carries {1} continuously, {2} times the {3} of the stage at nominal voltage; 1.35 times is usual"),
    STRAY_UNUSUAL(
            "a stray inductance of {0} is unusual for the wiring of a stage, {1} to {2} are usual: look at the unit"),
    BUS_UNUSUAL("a bus of {0} is unusual between the common point and a stage, {1} to {2} are usual: look at the unit"),
    REACTOR_PEAK(
            "the reactor withstands a peak of {0}, less than the {1} at the crest of its own continuous {2}; look at both"),
    PATH_NO_NEUTRAL("a stage in \"{0}\" has no neutral to join windings to; they stand between \"lines\""),
    PATH_LEAVES_COMMON(
            "windings between lines take the charge of a stage in \"{0}\" down to what is common to its three phases and no further: it never reads dead by them"),
    LINK_AGAINST_RATING(
            "the link \"{0}\" is one of {1}, the rating says {2}; leave the rating out, what a link carries beyond it is counted with"),
    MELTING_ABOVE_CLEARING("the melting I²t {0} is above the clearing I²t {1}; a fuse melts before it clears"),
    SECOND_WITHOUT_DOUBLE_WYE("\"second\" describes the second wye of a double wye; \"{0}\" has none"),
    UNUSED_TYPE("no stage and no spare uses the {0} \"{1}\""),
    UNUSED_SWITCH_TYPE("no device is of the switch type \"{0}\"; write \"type: {0}\" at the device, or leave it out"),
    NOT_GIVEN("\"{0}\" is not given; {1}"),
    NAMES_ALIKE("\"{0}\" and \"{1}\" differ only in capitals or blanks: easily mistaken on site"),

    // bank file: cross-checks of isolation
    STAGE_NOT_A_CONDUCTOR(
            "no device under isolation joins \"{0}\" to anything; a stage is a conductor of its name, between a switch and its units"),
    SWITCH_ELSEWHERE(
            "\"{0}\" stands between {1} and {2}, not at \"{3}\"; the switch of a stage has the stage on one side"),
    SWITCH_KIND("\"{0}\" is a {1}; a stage is switched by a stage-switch, breaker or load-break-switch"),
    STAGE_SWITCH_UNUSED(
            "no stage names \"{0}\" as its switch; write \"switch: {0}\" at the stage, or another kind of device"),
    DEVICE_NEEDS_BETWEEN(
            "a {0} needs \"between\" with the two conductors that it joins, such as \"between: [cable, bus]\""),
    BETWEEN_SAME("both sides are \"{0}\"; a device stands between two different conductors"),
    GROUNDING_SIDE("a {0} stands between a conductor and {1}; {2}"),
    POSITIONS_FIXED("a {0} has the positions {1}; leave \"positions\" out"),
    EXPOSES_GROUND("ground is no danger to expose; leave it out"),
    SOURCE_AT_GROUND("a source can't stand at ground; write the conductor that it makes live"),
    DOOR_HOLDS("a lock on a door always holds \"closed\", not \"{0}\"; leave \"holds\" out"),
    KEY_WITHOUT_LOCK("no lock has the key \"{0}\"; {1}"),
    KEY_ALONE("the key \"{0}\" is in one lock only, so it ties nothing to anything"),
    TOO_FEW_COPIES(
            "the key \"{0}\" would be trapped at the start in {1} places ({2}) but has {3}; check \"holds\", \"in\" and \"out\", or give its copies under \"keys\""),
    KEY_ON_BOTH_SIDES("the key \"{0}\" is on both sides of one exchange; a key goes in or comes out"),
    LOCK_UNKNOWN("there is no lock on {0} with the key \"{1}\"; {2}"),
    DELAY_SHORT(
            "the delay of {0} is shorter than the {1} that the units may take to discharge by {2}: the key comes free too early"),
    DELAY_NO_OPEN("\"{0}\" has no position \"open\"; a delay runs from the opening of switching devices"),
    ALWAYS_SATISFIED("every position of \"{0}\" is listed, so this blocks nothing"),
    NO_SOURCE("no source is given, but what nobody feeds needs no isolating; write every source, station service too"),
    STAGE_NEVER_FED("no closed devices join \"{0}\" to a source in service: is a device or a source missing?"),
    DOOR_WITHOUT_LOCK("no lock holds this door, though it exposes {0}: nothing but a rule keeps it shut"),
    COMPARTMENT_EMPTY("the compartment exposes nothing"),
    SERIAL_TWICE("the serial \"{0}\" stands twice, first in line {1}; a unit is in one place"),
    POSITION_TWICE("the position \"{0}\" stands twice, first in line {1}; one unit is there"),
    UNKNOWN_POSITION("there is no position \"{0}\"; {1}{2}"),

    // ---- interlock
    SCHEME_MISSING(
            "bank \"{0}\" has no isolation part, so nothing can be said of its locks; describe sources, devices, compartments and locks under isolation:"),
    SCHEME_TOO_LARGE(
            "the scheme needs {0} bits a state and has {1} conductors; up to 128 bits, 64 of them for devices and stages, 64 for doors, and 64 conductors are allowed; describe the lineup as two banks"),
    SCHEME_NAMED_TWICE("the name \"{0}\" is used twice; names in this list must differ"),
    SCHEME_UNKNOWN_NAME("{0} names the {1} \"{2}\", which does not exist; there are {3}"),
    SCHEME_NO_SUCH_POSITION("\"{0}\" has no position \"{1}\"; its positions are {2}"),
    SCHEME_SELECTOR_POSITIONS("selector \"{0}\" has fewer than two positions; list them, such as [off, manual, auto]"),
    SCHEME_LOCK_WITHOUT_KEY("the lock of {0} has no key; a lock traps at least one"),
    SCHEME_DELAY_ON_SELECTOR(
            "a delay lists the selector \"{0}\", which is never open; list switches, breakers or disconnectors"),
    SCHEME_DELAY_WITHOUT_LOCK("a delay holds back key \"{0}\" in a lock of \"{1}\", which has no lock with that key"),
    SCHEME_COPIES("key \"{0}\" has {1} copies; allowed are 1 or more"),
    SCHEME_KEY_TRAPPED_TOO_OFTEN(
            "key \"{0}\" would be trapped at the start in {1} places ({2}) but there is only {3} of it; a lock that holds the start position leaves its key free, any other traps it"),
    SCHEME_SAME_BANK("\"{0}\" is named twice; name the other banks of the site, each once"),

    // ---- isolation
    ISOLATION_NO_COMPARTMENT("nothing was named to get into; name one or more of {0}"),
    ISOLATION_UNKNOWN_COMPARTMENT("there is no compartment \"{0}\"; {1}there are {2}"),
    ISOLATION_UNKNOWN_DEVICE("there is no device \"{0}\"; {1}there are {2}"),
    ISOLATION_UNKNOWN_POSITION("\"{0}\" has no position \"{1}\"; its positions are {2}"),
    ISOLATION_UNKNOWN_COUNTED("\"{1}\" is not the name of {0}; {2}there are {3}"),
    ISOLATION_NO_STEP("there is no step {0}; the steps of this order run from 1 to {1}, and 0 is the start"),
    ISOLATION_STATE_FORMAT(
            "this is no saved state; one has the format \"{0}\", as \"isolate --state-after STEP\" prints it"),
    ISOLATION_TWO_STARTS(
            "\"{0}\" says where everything stands; leave --start and --open away, or say it with them instead of --from"),
    ISOLATION_STATE_FIELD("\"{0}\" is missing or not understood; expected is {1}"),
    ISOLATION_STATE_OTHER_BANK("the saved state is of \"{0}\", the bank is \"{1}\""),
    ISOLATION_STATE_NAMES("\"{0}\" of the saved state does not name exactly what the bank has: {1}"),

    // ---- network, unbalance
    SUPPLY_TRIANGLE(
            "line voltages {0}, {1} and {2} close no triangle; measure A-B, B-C and C-A again, each above 0 and none larger than the other two together"),
    CAPACITANCE_NOT_POSITIVE("capacitance {1} at {0} is not allowed; it must be above 0"),
    CAPACITANCE_MISSING("no capacitance is given for {0}; take the capacitances of the same bank"),
    BRANCH_UNKNOWN("{0} is in none of the stages that are looked at; give a position of one of these stages"),
    PHASE_UNKNOWN("there is no phase \"{1}\" of \"{0}\" here; phases are A, B and C of the stages that are looked at"),
    FAILURE_COUNT("{1} failures at {0} are not allowed; give 1 or more"),
    CONSTRUCTION_MISSING(
            "{1} at {0} needs to know what is inside unit type \"{2}\"; give its sections and elements in the bank file"),
    THREE_PHASE_UNITS(
            "stage \"{0}\" has three-phase units; these must be connected {1}, with groups and strings 1 and a reactor only on the line side"),
    SENSOR_UNSUITED("a {1} sensor cannot work on stage \"{0}\", which is {2}; it suits {3}"),
    NO_SOLUTION("stage \"{0}\" can't be solved: {1}"),
    SIGHTING_VALUE("a reading of {1} of \"{0}\" is not allowed; give an rms value, 0 or more"),
    SIGHTING_UNCERTAINTY("an uncertainty of {0} is not allowed; give a part above 0 and below 1, such as 0.03"),
    SIGHTING_LINE("a current of {1} in line \"{0}\" is not allowed; give lines A, B, C with 0 A or more"),
    SENSOR_UNKNOWN("there is no sensor \"{0}\"; known are {1}"),
    SENSOR_NOT_NAMED(
            "\"{0}\" does not say which sensor, and there are {2}; write name, equals sign and value; known are {1}"),
    PHASOR_SYNTAX(
            "\"{0}\" is not a value with an angle; write it such as \"20 mA∠79\" or \"20 mA@79\", the angle in degrees"),
    SENSOR_RATIO("the bank file gives no ratio for \"{0}\"; add it, or give the reading as a primary value"),
    NOTHING_OUT("no position is given; name the units that are out, {0}"),
    LOSS_NOT_ALLOWED("loss factor {0} is not allowed; give 0 to 1"),

    // ---- triage
    TRIAGE_SYMPTOM("\"{0}\" is no symptom that is known; say one of {1}"),
    TRIAGE_STAGE("there is no stage \"{0}\"; the bank has {1}"),

    // ---- discharge
    AFTER_NEGATIVE("{0} is not allowed; give a time after opening, 0 or more, such as \"3 min\""),
    TIME_CONSTANTS("\"{0}\" is not a number of time constants; give one above 0, such as 5"),
    OPENING_TYPED(
            "\"{0}\" names no stage and file; write stage, equals sign and file, such as STAGE=opening.svg; stages are {1}"),
    STICK_WITHOUT_OHMS(
            "the energy of a stick says nothing without its resistance; add --stick, such as --stick 10kohm"),

    // ---- fuse
    FUSE_STAGE_UNKNOWN("there is no stage \"{0}\"; stages are {1}"),
    FUSE_LINK_UNKNOWN(
            "there is no link \"{0}\" in the table; write a rating and a type, such as 40T: K and T with {1} A"),

    // ---- switching
    INRUSH_STAGE("there is no stage \"{0}\"; stages are {1}"),
    INRUSH_NEEDS_STAGE("say which stage is switched with --stage; stages are {0}"),
    INRUSH_ONTO_ITSELF("\"{0}\" can't be on already when it closes; name other stages, or none"),
    INRUSH_LIST("\"{0}\" is not understood; write it such as \"{1}\", names out of {2}"),
    INRUSH_VALUE("{0} at {1} is out of range; allowed are {2} to {3}"),
    INRUSH_DELTA("\"{0}\" can't stand on a delta: the voltages of its legs AB, BC and CA add up to zero, these to {1}"),
    INRUSH_OPEN_OR_CLOSE(
            "a stage opens or closes; leave out either --opening and --restrike or --trapped and --angles"),

    // ---- survey
    TABLE_TOO_LARGE("the file has {0} bytes, a table of readings at most {1}; is it the right file?"),
    TABLE_EMPTY("the file is empty; the first row names the columns, such as \"{0}\""),
    TABLE_IS_WORKBOOK("the file is a workbook, which is not read here; save it as CSV and try again"),
    TABLE_IS_MARKUP("the file is a web page or XML under another name; save it as .xlsx or CSV and try again"),
    TABLE_ROW_ABOVE("this row stands above the column names; it was not read: {0}"),
    WORKBOOK_OLD("the file is an old workbook (.xls); save it as .xlsx or CSV and try again"),
    WORKBOOK_LOCKED("the workbook is protected by a password; save it without one and try again"),
    WORKBOOK_KIND("the file is {0}; save it as .xlsx or CSV and try again"),
    WORKBOOK_BROKEN("the workbook can't be read ({0}); open it in a spreadsheet, save it again as .xlsx or CSV"),
    WORKBOOK_TOO_LARGE("the workbook unpacks to more than {0}; is it the right file?"),
    WORKBOOK_SHEET_UNKNOWN("there is no sheet \"{0}\"; the workbook has {1}"),
    WORKBOOK_SHEET_FOR_TEXT("the file is text and has no sheets; leave \"{0}\" away"),
    WORKBOOK_SHEET("sheet \"{0}\" was read; the workbook also has {1}"),
    WORKBOOK_SHEETS_ALIKE("more than one sheet looks like readings: {0}; say which one to read"),
    WORKBOOK_SHEET_HIDDEN("sheet \"{0}\" is hidden in the workbook; it was read"),
    WORKBOOK_ROWS_HIDDEN("rows {0} are hidden in the sheet; they were read like the others"),
    TABLE_NOT_TEXT("the file is not text (a zero byte stands in row {0}); save the table as CSV and try again"),
    TABLE_QUOTE_OPEN(
            "a quoted cell starts here and never ends; everything after it would be read as one cell: close the quote"),
    TABLE_COLUMN_MISSING("no column says {0}; the columns are {1}: name one of them \"{2}\""),
    TABLE_COLUMN_TWICE("the columns \"{0}\" and \"{1}\" both say {2}; keep one of them or rename the other"),
    TABLE_NOTHING_TO_READ("no column holds a measured value; the columns are {0}: name one of them \"capacitance\""),
    TABLE_NO_ROWS("there are no rows under the column names; write one row a unit"),
    TABLE_WINDOWS_1252("the file is not UTF-8; it was read as Windows-1252"),
    TABLE_UTF16("the file is UTF-16; it was read as such"),
    TABLE_COLUMN_KEPT("the column \"{0}\" is not known; it is kept as text and shown"),
    TABLE_UNIT_ASSUMED("the column \"{0}\" names no unit; its bare numbers were read as {1}"),
    TABLE_DECIMAL_COMMA("numbers were read with a decimal comma"),
    ROW_CELLS("the row has {0} cells, the header {1}; quote a cell that holds the delimiter"),
    ROW_NO_POSITION("the row names no position; {0}"),
    ROW_NO_VALUE("the row for \"{0}\" holds no measured value"),
    CELL_NOT_A_NUMBER("{0} \"{1}\" is not a number; write such as \"{2}\""),
    CELL_FORMULA(
            "{0} \"{1}\" is a formula without a stored value; open the file in a spreadsheet, let it calculate, and save it"),
    CELL_WRONG_UNIT("{0} \"{1}\" has the unit \"{2}\"; allowed are {3}"),
    CELL_NEGATIVE("{0} \"{1}\" is below zero; look at the sign"),
    CELL_AMBIGUOUS("{0} \"{1}\" may be a decimal comma or a thousands separator; write it with a decimal point"),
    CELL_OUT_OF_RANGE("{0} \"{1}\" is out of range; allowed are {2} to {3}"),
    CELL_TERMINALS(
            "terminals \"{0}\" are not known; allowed are such as A-B (third open), A-BC (third linked) and A-N"),
    CELL_NO_NEUTRAL("terminals \"{0}\": the unit is a delta inside and has no neutral"),
    CELL_WRONG_PLACE("{0} \"{1}\" was read at \"{2}\"; it belongs to {3}"),
    ROW_TEST_INCOMPLETE(
            "test voltage {0} with test current {1} gives no capacitance; both must be numbers, the voltage above zero"),
    ROW_TEST_BESIDE("capacitance {0} was read as written; test voltage and current say {1}"),
    ROW_TERMINALS_ASSUMED("terminals \"{0}\": {1}"),
    ROW_TERMINALS_OF_TWO(
            "terminals \"{0}\" say nothing of a single-phase unit; the reading was taken as that of the unit"),
    METER_LIMIT("a meter with limits of error of {0} is not allowed; give above 0 % and below 20 %, such as \"1 %\""),
    SPARE_NO_SERIAL("the row names no serial number; every spare needs one"),
    SPARE_SERIAL_TWICE("the serial number \"{0}\" stands in row {1} already; keep one of them"),
    SPARE_IN_SERVICE("the serial number \"{0}\" belongs to the unit at \"{1}\"; look at the nameplate"),
    SPARE_UNIT_UNKNOWN("there is no unit type \"{0}\"; known are {1}: add it to the bank file's unit-types"),
    SPARE_NO_UNIT("the row for \"{0}\" names no unit type; known are {1}"),

    // ---- fit, energize
    BUS_VOLTS("bus voltage {0} is not allowed; give the line-to-line voltage, above 0"),
    MEASURED_SYNTAX(
            "\"{0}\" is not a measured value; write place, equals sign and value, such as \"stage 2/A=12.5 A\""),
    MEASURED_NEGATIVE("measured value {0} is not allowed; give the rms value, 0 or more"),
    MEASURED_UNKNOWN("there is no \"{0}\" to measure; allowed are {1}"),
    MEASURED_DIMENSION("\"{0}\" can't be {1}; write it such as {2}"),
    MEASURED_TWICE("\"{0}\" is given twice; keep one value"),
    FIT_PLACE_UNKNOWN("{0} names \"{1}\", which is neither a position nor the serial number of a unit in place; {2}"),
    FIT_PLACE_AMBIGUOUS(
            "{0} names \"{1}\", which is the serial number of more than one unit in place: {2}; name the position"),
    FIT_SPARE_UNKNOWN("there is no spare \"{0}\"; spares are {1}"),
    FIT_SPARE_TWICE("the spare \"{0}\" is listed twice; give each spare once"),
    FIT_KEEP_CONDEMNED("{0} can't be kept: it is condemned{1}; measure it again if you doubt that"),
    FIT_SWAP_CONDEMNED("{0} can't change places with another: {1}; swap good units and spares only"),
    FIT_SWAP_UNFIT("\"{0}\" can't go to {1}: {2}"),
    FIT_SWAP_TWICE("{0} is in two swaps; name each unit once"),
    FIT_LIFTS_RANGE("{0} extra lifts can't be tried; give 0 to {1}"),

    // ---- job
    JOB_FIELD("must be {0}; the line was not written by this product, or was changed"),
    JOB_EVENT_ID("the id \"{0}\" is not that of its device and number, which is \"{1}\"; the line was changed"),
    JOB_EMPTY("there is no event in it; a job is a file with one event a line"),
    JOB_MIXED("events of two jobs, \"{0}\" and \"{1}\"; keep each job in its own file"),
    ARCHIVE_NOT_ONE("the file is no job archive ({0}); one is made by \"job export\" or by the app"),
    ARCHIVE_ENTRY(
            "\"{0}\" does not belong in a job archive: it holds one NAME.job.jsonl, and attachments/HASH for each attachment; nothing was taken from it"),
    ARCHIVE_LARGE("{0} unpacks to more than {1} MB; no job has that, and nothing was taken from it"),
    ARCHIVE_CHANGED(
            "attachment {0} holds something else than its name says: it was changed or damaged on its way; nothing was taken from the archive, get it again"),
    ARCHIVE_JOB("the log \"{0}\" is of the job \"{1}\"; nothing was taken from the archive"),
    JOB_TYPE_UNKNOWN(
            "events of type \"{0}\" are not known to this version; it is kept and not counted: use the newer version"),
    JOB_OPEN_ALREADY("the job is open already; for another job start another log"),
    JOB_NOT_OPEN("the job is not open yet; its first event opens it with the bank file"),
    JOB_CLOSED("the job is closed; only notes, signatures and the next visit may follow: open a new job"),
    JOB_STOPPED("work is stopped ({0}); look at everything, then resume, or end this order of work"),
    JOB_NOT_STOPPED("work is not stopped"),
    JOB_NO_ORDER("there is no order of work yet; make one"),
    JOB_ORDER_NONE_YET("it names an order of work to replace, and there is none; make the first one"),
    JOB_ORDER_NOT_REPLACED("there is an order of work already; a new one must name it, {0}, and so take its place"),
    JOB_ORDER_AS_FOUND(
            "a new order of work can't go on from the last step here ({0}); go clear, look at every device and door, and make it from what is found"),
    JOB_GROUNDS_UNSAID("the order before left {0} on {1}; count what is on it now, 0 where it is off, and say so"),
    JOB_ORDER_UNDER_WAY(
            "an order of work is under way; a new one goes on from its last confirmed step, unless a deviation ends it first"),
    JOB_ORDER_OTHER_STEP(
            "it goes on from {0} steps of the order before, of which {1} are done by now; stop, go clear, and make one order from what is found"),
    JOB_ORDER_OTHER_BANK("it was made from another description of the bank than the one that counts now; make it anew"),
    JOB_ORDER_ENDED("the order of work is not to be worked by any more ({0}); make a new one from what is found"),
    JOB_ORDER_OLD("the order {0} is not the one to work by; that is {1}"),
    JOB_ORDER_UNFINISHED(
            "the order of work is not done ({0}); finish it, or make a new one that leads back to service"),
    JOB_PLAN_REFUSED("no order of work can be proven: {0}"),
    JOB_PLAN_UNDECIDED(
            "not decided after {0} states, so there is no order of work; that does not mean that it is safe"),
    JOB_ALL_DONE("every step of the order of work is done"),
    JOB_STEP_NOT_NEXT("step {0} can't be confirmed now; step {1} is next"),
    JOB_NOT_A_HOLD("step {0} is not a waiting time"),
    JOB_SECOND_PERSON("step {0} needs a second person; type the name of who has looked too"),
    JOB_SECOND_SAME("the second person must be another one than {0}"),
    JOB_ITEM("not ticked: {0}"),
    JOB_LABEL_MISSING("read, scan or type the label of \"{0}\" from the thing itself"),
    JOB_LABEL_WRONG(
            "the label says \"{0}\", this order is for \"{1}\"; stop: this is not the place, or the order is not of it"),
    JOB_READING_MISSING("step {0} is a test; type what the instrument showed"),
    JOB_COUNT_MISSING("step {0} is a count; type the number that was counted"),
    JOB_COUNT_WRONG("{0} counted, {1} expected; stop and find what is missing or too many"),
    JOB_HOLD_NOT_STARTED("the waiting time of step {0} was not started on this device; start it, and wait"),
    JOB_HOLD_RUNNING("wait {0} s more; then prove dead: the end of a wait is no permission to touch"),
    JOB_CLOCK_BACK("the clock of this device ran back, so the wait can't be proven; start it anew"),
    JOB_PEOPLE_ON("{0} still signed on; {1} must wait until all are off"),
    JOB_PERSON_ON("{0} is signed on already"),
    JOB_PERSON_NOT_ON("{0} is not signed on"),
    JOB_NOT_AT_WORK("{0} must wait until every step of the way in is confirmed, and ends when the way back begins"),
    JOB_READING_EMPTY("nothing was measured; give one or more of {0}"),
    JOB_MOVE_NOWHERE(
            "the unit \"{0}\" goes from nowhere to nowhere; give where it stood, where it stands now, or both"),
    JOB_EVENT_NOT_HERE("there is no event {0} that counts"),
    JOB_EVENT_WITHDRAWN("the event {0} was taken back already"),
    JOB_NOT_TAKEN_BACK("the event {0} ({1}) can't be taken back; write what is so now instead"),
    JOB_NO_CONFLICT("the event {0} disagrees with nothing"),
    JOB_CONFLICT_OPEN("{0}: devices disagree; say which holds first"),
    JOB_AS_LEFT_MISSING("in which position was selector \"{0}\" left? write it down before the job is closed"),
    JOB_VISIT_PAST("{0} is past by this device's clock; give the day of a visit to come, and look at the clock"),
    JOB_VISIT_PURPOSE("say in a few words what the visit is for, such as \"measure stage 2 again\""),
    JOB_VISIT_NOT_HERE("there is no agreed visit {0} that this one could take the place of"),
    JOB_NOTHING_READ("no readings are in this job; type or import some first"),
    JOB_METER_NOT_HERE("no meter's limits were stated by {0} that these could take the place of"),
    DATE_SYNTAX("\"{0}\" is not a day of the calendar; write year, month and day, such as 2027-05-12"),
    JOB_NAME("\"{0}\" is not allowed; write small letters, digits and hyphens, at most 40, such as \"tablet-7\""),
    JOB_FILE_EXISTS("there is such a file already; a job is never begun over another: choose a new name"),
    JOB_HASH("\"{0}\" is not a hash; it has 64 small hexadecimal digits"),
    JOB_PHOTO_UNKNOWN("no attached photo has the hash {0}; attach it to the job first, then confirm the step with it"),
    JOB_TABLE_LARGE("the table has {0} characters, at most {1} are kept; is it the right file?"),
    JOB_RECORD_LARGE(
            "the record has {0} findings of up to {1} characters; at most {2} of {3} are kept: leave out what doesn't matter"),

    // ---- resonance, duty
    HARMONIC_SYNTAX(
            "\"{0}\" is not a harmonic; write order, colon and a voltage as a part of nominal or a current, such as \"5: 3 %\" or \"7: 14 A\""),
    HARMONIC_ORDER("the harmonic order {0} is not allowed; give 2 to 50"),
    HARMONIC_VALUE("the harmonic \"{0}\" is not allowed; give 0 % to 100 %, or 0 A or more"),
    HARMONIC_TYPED_TWICE("the order {0} is given twice; keep one value"),
    COMBINATIONS_TOO_MANY(
            "{0} combinations of stages are more than the {1} that are looked at one by one; name the stages that are on with --stages"),
    RESONANCE_STAGE("there is no stage \"{0}\"; there are {1}"),
    MEASURED_HARMONIC_CURRENT("{0} is a current; give the bus voltage as a part of nominal, such as \"5: 3 %\""),
    OVERVOLTAGE_PAIR("height and time go together; write such as --overvoltage 1.4 --for 10s"),
    OVERVOLTAGE_HEIGHT(
            "\"{0}\" is not a height; write times rated voltage such as 1.4 or \"140 %\", or the bus voltage such as 17kV"),
    RATIO_TYPED("\"{0}\" is not a ratio; write primary, colon, secondary, such as 7200:120"),

    // ---- record
    CHANNEL_MAP_SYNTAX(
            "\"{0}\" doesn't say what a channel measures; write name, equals sign and place, such as \"IA=stage 1/A\""),
    CHANNEL_MAP_UNKNOWN("there is no channel \"{0}\"; there are {1}"),
    CHANNEL_MAP_AMBIGUOUS("there is more than one channel \"{0}\"; write its number: {1}"),
    CHANNEL_MAP_ROLE("there is no place \"{0}\"; there are {1}"),
    CHANNEL_MAP_UNIT("channel \"{0}\" is in \"{1}\" and can't be {2}"),
    CHANNEL_MAP_TWICE("channel \"{0}\" is given twice; keep one place"),
    CHANNEL_MAP_SIDE(
            "\"{0}\": \"{1}\" is no side; write @primary, @secondary (of a sensor whose ratio the bank file gives) or a ratio such as @7200:120"),
    CHANNEL_MAP_NO_BANK("places are those of a bank; name its bank file behind the record"),
    RECORD_WINDOW(
            "waveforms from {0} s to {1} s in {2} points can't be given; the end lies behind the begin, points are 4 to {3}"),

    // ---- server
    SERVER_FOLDER("the folder can't be used ({0}); choose another with --data, or mend its permissions"),
    SERVER_IN_USE("another server has this folder; stop it first, or choose another folder with --data"),
    SERVER_STORE_BUSY(
            "another program holds the database and does not let go; close it (a backup, a viewer of databases, a program that synchronises folders) and start again; nothing was changed"),
    SERVER_STORE_DAMAGED(
            "the database is damaged ({0}); nothing was changed. Copy the whole folder away first; then start on the last good copy of it, or on an empty folder with --data: every device that took part sends what it holds again"),
    SERVER_STORE_NEWER("the database was made by a newer version; nothing was changed, start that version"),
    SERVER_NO_ROOM_TO_START(
            "the database's program can't be unpacked into the folder for temporary files, \"{0}\"; make room there or mend its permissions, and start again; the data were not looked at and are as they were"),
    DEMO_NOT_FILLED("the demo's banks and jobs could not be put in ({0}); mend that, and start again with --fresh"),
    DEMO_FOLDER(
            "the folder holds data that the demo did not make, so it leaves them alone; choose another folder with -o"),
    SERVER_PORT("port {0} is taken; stop what has it, or choose another with --port"),

    // ---- records (comtrade): what can't be read
    RECORD_NOT_A_CFG("no configuration of a disturbance record; it needs station, channels and times, one a line"),
    RECORD_CFG_TOO_LARGE("the configuration has {0} bytes, at most {1} are read; is it the right file?"),
    RECORD_CFG_LINES("the configuration has more than {0} lines; is it the right file?"),
    RECORD_UTF16("the configuration is UTF-16; save it as UTF-8 or ask for it anew"),
    RECORD_CODE_PAGE("there is no code page \"{0}\" here; try UTF-8, windows-1252, windows-1251 or cp866"),
    RECORD_COUNTS(
            "\"{0}\" states no numbers of channels; write total, analog and status channels such as \"12,8A,4D\""),
    RECORD_LINES_MISSING(
            "{0} channels are stated but only {1} lines follow; the configuration is cut or its counts are wrong"),
    RECORD_CHANNEL_LINE(
            "this should be {0} channel {1} but has {2} fields where {3} are due; the counts in line 2 don't fit the lines"),
    RECORD_FREQUENCY_LINE(
            "this should be the line's frequency but has {0} fields; the counts in line 2 don't fit the lines"),
    RECORD_RATE_COUNT("\"{0}\" is no number of sampling rates; allowed is a whole number, 0 or more"),
    RECORD_DATA_EMPTY("the data are empty; ask for the record anew"),
    RECORD_DATA_FORMAT(
            "the data are neither text nor samples whose numbers count up; are they those of this configuration?"),
    RECORD_DATA_SHORT("the data have {0} bytes, one sample alone needs {1}; are they those of this configuration?"),
    RECORD_ROW_SHORT(
            "the data have {0} bytes a sample, the configuration needs {1}; are they those of this configuration?"),
    RECORD_ROW_TOO_LONG("this line of the data has more than {0} bytes; is it text at all?"),
    RECORD_NO_SAMPLES("the data hold no sample that fits the configuration; are they those of this configuration?"),
    RECORD_NO_CHANNEL("there is no analog channel \"{0}\"; there are {1}"),
    RECORD_NOTHING_THERE("no sample lies from {1} to {2}; the record runs from 0 s to {0} s"),
    RECORD_TOO_MANY(
            "{0} samples of {1} channels are more than the {2} values that are kept at once: {3} samples; read a part with a first and a last time, or fewer of the {4} channels"),
    RECORD_CFF_PART("the combined file has no part \"{0}\"; a line such as \"--- file type: {0} ---\" starts it"),
    RECORD_CFF_BASE64(
            "samples in base64 are of no published edition and are not read; export the record as .cfg and .dat"),

    // ---- records (comtrade): what is forgiven
    RECORD_MORE_ALIKE("{0} more of the remark before"),
    RECORD_BOM("a byte order mark stands in front; skipped"),
    RECORD_CODE_PAGE_GUESSED(
            "names are not UTF-8 and no file states a code page; read as {0} by their look, choose another if they look wrong"),
    RECORD_CODE_PAGE_NOT_HERE(
            "names look like {0}, which this reader does not know here; they are shown in part, values are not touched"),
    RECORD_LINE_ENDS("lines end in different ways; each was accepted"),
    RECORD_BLANK_LINES("{0} blank lines; skipped"),
    RECORD_COMMA_IN_NAME("there are more fields than due; the name was taken as \"{0}\""),
    RECORD_LINE_FIELDS("{0} fields too many at the end; skipped"),
    RECORD_FIELDS_MISSING("{0} fields where {1} are due; what is missing was taken as not known"),
    RECORD_NO_SCALE("\"{0}\" has no scale (a \"{1}\", b \"{2}\"); its values are shown as missing"),
    RECORD_CONSTANT_CHANNEL("\"{0}\" has the multiplier 0: every value is its offset, whatever the recorder saw"),
    RECORD_SKEW("\"{0}\" has the skew \"{1}\", which is no number; taken as 0"),
    RECORD_SIDE("\"{0}\" has the side \"{1}\", neither P nor S; whether its values are primary is not known"),
    RECORD_RATIO("\"{0}\" has the ratio {1}:{2}; values of the other side can't be given"),
    RECORD_RATIO_ONE(
            "\"{0}\" is secondary with a ratio of 1:1: the real ratio was probably never entered in the recorder"),
    RECORD_NORMAL("\"{0}\" has the normal state \"{1}\"; taken as not known"),
    RECORD_CHANNEL_NUMBER("the channel is numbered \"{0}\" and stands at place {1}; its place was taken"),
    RECORD_YEAR("\"{0}\" is no edition of the standard; read as {1}"),
    RECORD_FORM("the year is \"{0}\", but an analog line has {1} fields; read in the form of {2}"),
    RECORD_COUNT_LETTER("\"{0}\" has neither A nor D behind its number; taken by its place"),
    RECORD_TOTAL("{0} channels are stated in all, {1} analog and {2} status ones; the latter were taken"),
    RECORD_LINE_MISSING("the configuration ends before {0}"),
    RECORD_FREQUENCY("the line's frequency is \"{0}\"; taken as not known"),
    RECORD_RATE("\"{0}\" is no sampling rate; the time stamps are needed"),
    RECORD_RATES_MISSING("{0} sampling rates are stated, {1} follow; those were taken"),
    RECORD_RATE_COUNTS(
            "the sampling rates have numbers of samples instead of last samples; taken as such, they add up"),
    RECORD_RATE_ORDER("the last samples of the sampling rates don't rise; what adds no sample was skipped"),
    RECORD_DATE("\"{0}\" is no date with a time; the instant is not known"),
    RECORD_DATE_ORDER("\"{0}\" is no date in the order of the edition of {1}; day and month taken the other way"),
    RECORD_SHORT_FRACTION("the fraction \"{0}\" of the second has fewer than 6 digits; read as a decimal fraction"),
    RECORD_FORMAT("\"{0}\" is no format of data; told from the data"),
    RECORD_MULTIPLIER("the multiplier of the time stamps is \"{0}\"; taken as 1"),
    RECORD_LINES_AFTER("{0} lines follow that don't belong there; skipped"),
    RECORD_FORMATS_DIFFER("the data are stated as {0} here and as {1} in the configuration; read as {0}"),
    RECORD_DATA_IS_TEXT("stated as {0}, but the data are text; read as ASCII"),
    RECORD_DATA_IS_BINARY("stated as ASCII, but the data are not text; read as {0}, whose numbers count up"),
    RECORD_ROW_LENGTH(
            "a sample has {0} bytes where the configuration needs {1}: its numbers count up that way; the rest of each was skipped"),
    RECORD_END_MARKS("{0} end-of-file marks follow the {1} samples; skipped"),
    RECORD_DATA_CUT(
            "{0} bytes follow the {1} whole samples: the last one is cut or the file is not of this configuration"),
    RECORD_ROW_CUT("the last line has {0} of {1} fields and no end: it is cut and was left out"),
    RECORD_NOT_A_ROW("\"{0}\" is no sample; skipped"),
    RECORD_ROW_FIELDS("{0} fields where {1} are due; what is missing was taken as missing, what is too much skipped"),
    RECORD_VALUE("\"{0}\" is no number; taken as missing"),
    RECORD_MARK("{0} lies beyond the channel's range and marks missing values in another edition; taken as missing"),
    RECORD_STATE("\"{0}\" is neither 0 nor 1; taken as 0"),
    RECORD_SAMPLE_COUNT("the configuration states {0} samples, the data hold {1}; the latter were taken"),
    RECORD_NUMBERS_JUMP("the numbers of samples jump {0} times: lines may be missing"),
    RECORD_WRAPS("the counter of the time stamps began anew {0} times; counted on"),
    RECORD_STAMPS_DIFFER("time stamps and sampling rates contradict each other; the rates were taken"),
    RECORD_STAMPS_FALL("time stamps run backwards {0} times: parts may overlap; the sampling rates were taken"),
    RECORD_BACKWARDS("time runs backwards from sample {0} to {1} and no rate is stated; the step before was taken"),
    RECORD_GAP("a gap from sample {0} to {1}: {2} by the time stamps, {3} by the sampling rate; the stamps were taken"),
    RECORD_NO_TIME(
            "neither sampling rates nor time stamps: the times are the numbers of the samples, no time or frequency can be told"),
    RECORD_NEGATIVE_STAMP("the time stamps start below 0: the line of the first sample is that of the trigger"),
    RECORD_TRIGGER("the trigger \"{0}\" lies outside the record that starts at \"{1}\"; taken as not known"),
    RECORD_CFF_SEPARATOR("\"{0}\" is not written as the standard has it; understood"),
    RECORD_CFF_UNKNOWN("there is no part \"{0}\" in a combined file; skipped"),
    RECORD_CFF_FORMAT("\"{0}\" names no format of data; the configuration's was taken"),
    RECORD_CFF_NO_COUNT("the number of bytes is missing; the {0} bytes to the end were taken"),
    RECORD_CFF_CUT("{0} bytes of data are stated, {1} are there; those were taken"),

    // ---- command line, report
    BUS_VOLTS_TYPED("\"{0}\" is neither one line voltage nor three (AB,BC,CA); write 13.8kV or 13.8kV,13.7kV,13.9kV"),
    OPTION_PAIR("\"{0}\" is not understood; write NAME=VALUE, such as \"52=open\""),
    OPTION_TWICE("\"{0}\" is given twice, as \"{1}\" and as \"{2}\"; only one can be so: leave the other away"),
    NOT_POSITIVE("{0} is not above zero; write what was measured"),
    REPORT_KIND("a report is written as .pdf, .xlsx or .json; give -o a name that ends so"),
    ANSWER_LOST(
            "the answer can't be printed whole ({0}); files that the command had to write are written. Make room where the answer goes, and ask again"),
    FILE_MISSING("there is no such file; check the name and the folder"),
    FOLDER_MISSING("there is no such folder; is the path right?"),
    FILE_IS_A_FOLDER("this is a folder; name a file in it"),
    FILE_UNREADABLE("the file can't be read ({0}); check its permissions"),
    FILE_NOT_OURS("the file has {0} MB; at most {1} MB are read; is it the right file?"),
    FILE_UNWRITABLE(
            "the file can't be written ({0}); what stood there before still stands. Make room or mend the permission, or choose another place"),
    RECORD_FILE_KIND("a record is a .cfg with its .dat, or a .cff; name one of these"),
    RECORD_PARTNER(
            "there is no {0} of the same name beside it; a record needs its .cfg and its .dat: copy them together"),
    RECORD_TIMES("the first time wanted, {0}, lies after the last, {1}; write the earlier one first"),
    NOT_A_DAY("\"{0}\" is no day of the calendar; write it such as \"2026-05-04\"");

    private final String template;

    Message(String template) {
        this.template = template;
    }

    /** Number of placeholders: one more than the highest that the template names. */
    public int placeholders() {
        int count = 0;
        while (template.contains("{" + count + "}")) {
            count++;
        }
        return count;
    }

    String fill(List<String> arguments) {
        if (arguments.size() != placeholders()) {
            throw new IllegalArgumentException(
                    name() + " takes " + placeholders() + " arguments, got " + arguments.size());
        }
        StringBuilder out = new StringBuilder();
        int at = 0;
        while (at < template.length()) {
            char c = template.charAt(at);
            if (c == '{'
                    && at + 2 < template.length()
                    && template.charAt(at + 2) == '}'
                    && Character.isDigit(template.charAt(at + 1))) {
                out.append(arguments.get(template.charAt(at + 1) - '0'));
                at += 3;
            } else {
                out.append(c);
                at++;
            }
        }
        return out.toString();
    }
}
