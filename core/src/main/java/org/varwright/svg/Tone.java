package org.varwright.svg;

/** What a line, an area or a word is for; it has a colour for light screens and paper, and one for dark screens. Never the only carrier of meaning. */
public enum Tone {
    PAPER("paper", "#ffffff", "#14171b"),
    INK("ink", "#000000", "#f2f2f2"),
    QUIET("quiet", "#454545", "#b9bec4"),
    RULE("rule", "#5a5a5a", "#959ba2"),
    GRID("grid", "#c4c4c4", "#41474e"),
    FINE("fine", "#e4e4e4", "#282d33"),
    SHADE("shade", "#e2e2e2", "#363c43"),
    LIMIT("limit", "#8a0000", "#ff9c91"),
    FIRST("first", "#000000", "#f2f2f2"),
    SECOND("second", "#0b4a8f", "#8fc4ff"),
    THIRD("third", "#9a3300", "#ffb184"),
    FOURTH("fourth", "#1f5f2a", "#93d9a0"),
    FIFTH("fifth", "#64288a", "#d9b3f7"),
    SIXTH("sixth", "#6b5000", "#e8cd74"),
    FAR_BELOW("far-below", "#93b9e6", "#1f5490"),
    BELOW("below", "#c3d9f1", "#1b3e66"),
    JUST_BELOW("just-below", "#e6eff9", "#1a2c42"),
    JUST_ABOVE("just-above", "#fcefdd", "#392a17"),
    ABOVE("above", "#f7d2a4", "#5a3a12"),
    FAR_ABOVE("far-above", "#eea95a", "#80500f");

    private final String word;
    private final String light;
    private final String dark;

    Tone(String word, String light, String dark) {
        this.word = word;
        this.light = light;
        this.dark = dark;
    }

    /** Attributes of something filled with it. */
    String fill() {
        return "class=\"vf-" + word + "\" fill=\"" + light + "\"";
    }

    /** Attributes of a line drawn with it. */
    String stroke() {
        return "class=\"vs-" + word + "\" fill=\"none\" stroke=\"" + light + "\"";
    }

    /** Style rules for dark screens: they win over the attributes, which paper and old readers keep to. */
    String darkRules() {
        return ".vf-" + word + "{fill:" + dark + "}.vs-" + word + "{stroke:" + dark + "}";
    }
}
