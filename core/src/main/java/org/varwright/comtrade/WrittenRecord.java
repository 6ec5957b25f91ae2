package org.varwright.comtrade;

/** The files of a record as bytes. */
public final class WrittenRecord {
    private final byte[] configuration;
    private final byte[] data;
    private final DataFormat format;
    private final String header;
    private final String information;

    WrittenRecord(byte[] configuration, byte[] data, DataFormat format, String header, String information) {
        this.configuration = configuration;
        this.data = data;
        this.format = format;
        this.header = header;
        this.information = information;
    }

    /** The {@code .cfg} file. */
    public byte[] configuration() {
        return configuration.clone();
    }

    /** The {@code .dat} file. */
    public byte[] data() {
        return data.clone();
    }

    /** The {@code .hdr} file; nothing in it where there is no text. */
    public byte[] header() {
        return new Octets().text(header).toArray();
    }

    /** The {@code .inf} file; nothing in it where there is no text. */
    public byte[] information() {
        return new Octets().text(information).toArray();
    }

    /** All of them in one {@code .cff} file, as 2013 has it. */
    public byte[] combined() {
        String size = format == DataFormat.ASCII ? "" : ": " + data.length;
        return new Octets()
                .line("--- file type: CFG ---")
                .all(configuration)
                .line("--- file type: INF ---")
                .text(ended(information))
                .line("--- file type: HDR ---")
                .text(ended(header))
                .line("--- file type: DAT " + format + size + " ---")
                .all(data)
                .toArray();
    }

    private static String ended(String text) {
        return text.isEmpty() || text.endsWith("\n") ? text : text + "\r\n";
    }
}
