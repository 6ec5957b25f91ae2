package org.varwright.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.varwright.job.Counted;
import org.varwright.job.Fact;
import org.varwright.job.Order;
import org.varwright.report.document.Block;
import org.varwright.report.document.Section;
import org.varwright.report.photo.Photo;
import org.varwright.report.photo.PhotoReading;

/** Pictures of steps and attachments, as far as they are at hand. */
final class PhotoSection {
    /** A report stays one that can be mailed and opened. */
    private static final int MOST = 60;

    private PhotoSection() {}

    /** Empty where the job has no pictures. */
    static Optional<Section> of(JobReport report) {
        Map<String, String> wanted = wanted(report);
        if (wanted.isEmpty()) {
            return Optional.empty();
        }
        List<Block> blocks = new ArrayList<>();
        List<String> left = new ArrayList<>();
        int shown = 0;
        for (Map.Entry<String, String> each : wanted.entrySet()) {
            Optional<byte[]> bytes = report.photos().find(each.getKey());
            if (bytes.isEmpty()) {
                left.add(each.getValue() + ": not at hand when this report was made.");
            } else if (shown == MOST) {
                left.add(each.getValue() + ": left out, " + MOST + " are the most that a report shows.");
            } else {
                switch (Photo.read(bytes.get())) {
                    case PhotoReading.Shown photo -> {
                        shown++;
                        blocks.add(new Block.Photograph(photo.jpeg(), photo.width(), photo.height(), each.getValue()));
                    }
                    case PhotoReading.NotShown why -> left.add(each.getValue() + ": " + why.reason() + ".");
                }
            }
        }
        if (!left.isEmpty()) {
            blocks.add(new Block.Notice(Block.Notice.Weight.NOTE, "Not shown", left));
        }
        return Optional.of(new Section("Photographs", Section.PageStart.RUN_ON, blocks));
    }

    /** Hash to what the picture is of: those of steps first, then attached ones. */
    private static Map<String, String> wanted(JobReport report) {
        Map<String, String> wanted = new LinkedHashMap<>();
        for (Order order : report.job().orders()) {
            for (Order.Confirmation done : order.confirmed()) {
                done.fact()
                        .photo()
                        .ifPresent(hash -> wanted.putIfAbsent(
                                hash,
                                "step " + done.fact().step() + ", "
                                        + report.times().second(done.event()) + ", "
                                        + done.event().by() + " (" + JobNotesSection.name(report, hash) + ")"));
            }
        }
        for (Counted<Fact.Attached> attached : report.job().counted(Fact.Attached.class)) {
            if (attached.fact().mediaType().startsWith("image/")) {
                wanted.putIfAbsent(
                        attached.fact().sha256(),
                        attached.fact().name() + ", " + report.times().second(attached.event()) + ", "
                                + attached.event().by());
            }
        }
        return wanted;
    }
}
