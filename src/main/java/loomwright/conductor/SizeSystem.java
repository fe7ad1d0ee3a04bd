package loomwright.conductor;

/** The standards by which a conductor size is named. */
public enum SizeSystem {
    AWG("awg"),
    METRIC_IEC60228("iec60228-class5"),
    METRIC_ISO6722("iso6722"),
    SAE("sae-cable"),
    /** Not steps of a series but a way to write any stranded area. */
    STRANDS("strands");

    private final String tableName;

    SizeSystem(String tableName) {
        this.tableName = tableName;
    }

    /** The table the sizes of this standard are listed in. */
    public ReferenceTable table() {
        return ReferenceTables.get(tableName);
    }
}
