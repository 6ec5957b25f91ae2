package org.varwright.triage;

/** Something that the bank file names. */
public record Thing(Kind kind, String name) {
    /** What sort of thing. */
    public enum Kind {
        STAGE("stage"),
        DEVICE("device"),
        COMPARTMENT("compartment"),
        SENSOR("sensor"),
        SOURCE("source"),
        UNIT_TYPE("unit-type"),
        FUSE_TYPE("fuse-type"),
        SPARE("spare"),
        KEY("key");

        private final String code;

        Kind(String code) {
            this.code = code;
        }

        public String code() {
            return code;
        }
    }
}
