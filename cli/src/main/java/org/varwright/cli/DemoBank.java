package org.varwright.cli;

/** The invented banks. */
enum DemoBank {
    CORBEL_REACH_3("corbel-reach-3"),
    LANTERN_MESA_1("lantern-mesa-1"),
    HALLIN_MOOR_2("hallin-moor-2");

    private final String file;

    DemoBank(String file) {
        this.file = file;
    }

    /** What the names of its files begin with. */
    String file() {
        return file;
    }
}
