package org.varwright.bankfile;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.NodeEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.varwright.problem.Message;
import org.varwright.problem.Place;

/**
 * YAML 1.2 text into a {@link Tree}. Works on the parser's events rather than its nodes, so that aliases, tags and depth are refused before anything
 * grows, and every key and value has its line and column.
 */
final class TreeReader {
    private static final int DEEPEST = 12;

    private final Findings findings;
    private final String text;
    private final Deque<Frame> open = new ArrayDeque<>();
    private @Nullable Tree root;
    private int documents;
    private boolean stopped;

    private TreeReader(String text, Findings findings) {
        this.text = text;
        this.findings = findings;
    }

    /** A mapping or list that has not ended. */
    private static final class Frame {
        final boolean mapping;
        final Place place;
        final List<Tree> items = new ArrayList<>();
        final List<Tree.Entry> entries = new ArrayList<>();
        final Map<String, Integer> lines = new HashMap<>();

        @Nullable
        String key;

        Place keyPlace = Place.NOWHERE;

        Frame(boolean mapping, Place place) {
            this.mapping = mapping;
            this.place = place;
        }

        boolean expectsKey() {
            return mapping && key == null;
        }

        Tree close() {
            return mapping ? new Tree.Mapping(entries, place) : new Tree.Sequence(items, place);
        }
    }

    /** The tree, or nothing where the text can't be read at all; what is wrong goes to {@code findings}. */
    static Optional<Tree> read(String text, Findings findings) {
        return new TreeReader(withoutTabsBetweenJson(text), findings).read();
    }

    /** JSON allows tabs between its parts where the YAML parser stops at them; a blank each keeps every column. */
    private static String withoutTabsBetweenJson(String text) {
        if (text.indexOf('\t') < 0 || !text.stripLeading().startsWith("{")) {
            return text;
        }
        StringBuilder out = new StringBuilder(text);
        boolean inString = false;
        for (int i = 0; i < out.length(); i++) {
            char c = out.charAt(i);
            if (inString && c == '\\') {
                i++;
            } else if (c == '"') {
                inString = !inString;
            } else if (c == '\t' && !inString) {
                out.setCharAt(i, ' ');
            }
        }
        return out.toString();
    }

    private Optional<Tree> read() {
        LoadSettings settings = LoadSettings.builder()
                .setCodePointLimit(BankFile.MAXIMUM_BYTES)
                .setBufferSize(text.length() + 1) // in one go: a long line read piece by piece takes quadratic time
                .setLabel("")
                .build();
        try {
            Iterator<Event> events = new Parse(settings).parseString(text).iterator();
            while (!stopped && events.hasNext()) {
                take(events.next());
            }
            if (documents == 0) {
                // Comments and blank lines only: the parser sees no document at all.
                findings.error(Message.FILE_EMPTY, new Place(findings.file(), 1, 1, ""));
            }
        } catch (MarkedYamlEngineException e) {
            syntax(e);
        } catch (YamlEngineException e) {
            findings.error(
                    Message.YAML_SYNTAX,
                    new Place(findings.file(), 0, 0, path()),
                    Shown.of(String.valueOf(e.getMessage())));
        }
        return Optional.ofNullable(root);
    }

    private void syntax(MarkedYamlEngineException e) {
        root = null;
        Place place = place(e.getProblemMark().or(e::getContextMark));
        String problem = e.getProblem() == null ? "" : e.getProblem();
        if (problem.contains("TAB") || problem.contains("\\t")) {
            findings.error(Message.TAB_INSTEAD_OF_BLANKS, place);
            return;
        }
        String context = e.getContext() == null ? "" : e.getContext();
        findings.error(Message.YAML_SYNTAX, place, context.isEmpty() ? problem : problem + " (" + context + ")");
    }

    private void take(Event event) {
        switch (event.getEventId()) {
            case DocumentStart -> {
                documents++;
                if (documents > 1) {
                    findings.error(Message.SEVERAL_DOCUMENTS, place(event.getStartMark()));
                    stopped = true;
                }
            }
            case Alias -> {
                AliasEvent alias = (AliasEvent) event;
                refuse(Message.ANCHOR_OR_ALIAS, alias, "*" + alias.getAlias().getValue());
                if (!stopped) {
                    value(new Tree.Unreadable(place(event.getStartMark())));
                }
            }
            case Scalar -> scalar((ScalarEvent) event);
            case MappingStart, SequenceStart -> start((CollectionStartEvent) event);
            case MappingEnd, SequenceEnd -> value(open.pop().close());
            case StreamStart, StreamEnd, DocumentEnd, Comment -> {
                // nothing stands there
            }
        }
    }

    private void scalar(ScalarEvent event) {
        if (event.getAnchor().isPresent()) {
            refuse(Message.ANCHOR_OR_ALIAS, event, "&" + event.getAnchor().get().getValue());
        }
        event.getTag().ifPresent(tag -> refuse(Message.YAML_TAG, event, tag));
        if (stopped) {
            return;
        }
        Place place = place(event.getStartMark());
        Frame frame = open.peek();
        if (frame != null && frame.expectsKey()) {
            frame.keyPlace = new Place(place.file(), place.line(), place.column(), join(path(), event.getValue()));
            frame.key = event.getValue();
            return;
        }
        value(new Tree.Scalar(event.getValue(), event.isPlain(), place));
    }

    private void start(CollectionStartEvent event) {
        if (event.getAnchor().isPresent()) {
            refuse(Message.ANCHOR_OR_ALIAS, event, "&" + event.getAnchor().get().getValue());
        }
        event.getTag().ifPresent(tag -> refuse(Message.YAML_TAG, event, tag));
        Place place = place(event.getStartMark());
        Frame frame = open.peek();
        if (frame != null && frame.expectsKey()) {
            findings.error(Message.KEY_NOT_TEXT, place);
            stop();
        } else if (open.size() >= DEEPEST) {
            findings.error(Message.NESTED_TOO_DEEP, place);
            stop();
        }
        if (!stopped) {
            open.push(new Frame(event.getEventId() == Event.ID.MappingStart, place));
        }
    }

    private void refuse(Message message, NodeEvent event, String found) {
        findings.error(message, place(event.getStartMark()), Shown.of(found));
        Frame frame = open.peek();
        if (frame != null && frame.expectsKey()) {
            stop();
        }
    }

    private void stop() {
        stopped = true;
        root = null;
    }

    private void value(Tree value) {
        Frame frame = open.peek();
        if (frame == null) {
            root = value;
        } else if (frame.key == null) {
            frame.items.add(value);
        } else {
            String key = frame.key;
            Integer first = frame.lines.putIfAbsent(key, frame.keyPlace.line());
            if (first == null) {
                frame.entries.add(new Tree.Entry(key, frame.keyPlace, value));
            } else {
                findings.error(Message.DUPLICATE_KEY, frame.keyPlace, Shown.of(key), String.valueOf(first));
            }
            frame.key = null;
        }
    }

    /** Path of the value that comes next. */
    private String path() {
        String path = "";
        Iterator<Frame> frames = open.descendingIterator();
        while (frames.hasNext()) {
            Frame frame = frames.next();
            if (!frame.mapping) {
                path = path + "[" + frame.items.size() + "]";
            } else if (frame.key != null) {
                path = join(path, frame.key);
            }
        }
        return path;
    }

    static String join(String path, String key) {
        String shown = Shown.of(key);
        return path.isEmpty() ? shown : path + "." + shown;
    }

    private Place place(Optional<Mark> mark) {
        return mark.map(m -> new Place(findings.file(), m.getLine() + 1, m.getColumn() + 1, path()))
                .orElseGet(() -> new Place(findings.file(), 0, 0, path()));
    }
}
