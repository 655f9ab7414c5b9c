package bendline.report;

import bendline.analysis.CastAnalysis;
import bendline.analysis.ClipAnalysis;
import bendline.analysis.Progress;
import bendline.body.Faces;
import bendline.flight.Gain;
import bendline.footage.Footage;
import bendline.footage.Picture;
import bendline.footage.PictureReader;
import bendline.image.VideoPlanes;
import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * The folder that one analysis becomes. It appears whole under its name or not at all: everything is written into a hidden
 * folder beside it, which is then moved.
 */
public final class CastFolder {

    /**
     * Checks that a folder can be written under a name, before work is put into an analysis.
     *
     * @param out a name that is free, or an empty folder
     * @throws OutputFolderException with one sentence for the user where it can't be used
     */
    public static void check(Path out) {
        OutputFolder.check(out);
    }

    /** What this computer lacks for a whole report and what is left out for it, one sentence for the user; null if nothing. */
    public static @Nullable String leftOut() {
        return Lettering.TROUBLE;
    }

    /**
     * Writes everything.
     *
     * @param analysis what to write; its clip is read again for the pictures
     * @param out a name that is free, or an empty folder
     * @param progress told what is being written
     * @throws OutputFolderException where the folder can't be used
     * @throws IOException where writing failed half way; nothing is left behind
     */
    public void write(ClipAnalysis analysis, Path out, Progress progress) throws IOException {
        write(analysis, out, new Faces(List.of()), progress);
    }

    /**
     * The same with faces made unrecognisable in every picture that is written.
     *
     * @param veiled where faces may be in each frame, as {@link bendline.body.FaceFinder} tells
     * @throws OutputFolderException where the folder can't be used
     * @throws IOException where writing failed half way; nothing is left behind
     */
    public void write(ClipAnalysis analysis, Path out, Faces veiled, Progress progress) throws IOException {
        write(analysis, out, ReportOptions.PLAIN.veiling(veiled), progress);
    }

    /**
     * The same with more or other things in it.
     *
     * @throws OutputFolderException where the folder can't be used
     * @throws IOException where writing failed half way; nothing is left behind
     */
    public void write(ClipAnalysis analysis, Path out, ReportOptions options, Progress progress) throws IOException {
        try (OutputFolder folder = OutputFolder.beside(out)) {
            Path in = folder.staging();
            Files.writeString(in.resolve("analysis.json"), new AnalysisJson().write(analysis));
            try (BufferedWriter csv = Files.newBufferedWriter(in.resolve("frames.csv"))) {
                new FramesCsv().write(analysis, csv);
            }
            try (BufferedWriter csv = Files.newBufferedWriter(in.resolve("curves.csv"))) {
                new CurvesCsv().write(analysis, csv);
            }
            Map<Integer, List<CastCharts.Chart>> charts = charts(analysis, in);
            Map<Integer, Still> stills = pictures(analysis, in, options, progress);
            Files.writeString(
                    in.resolve("report.html"), new ReportPage(analysis, stills, charts, options, false).write());
            if (options.pdf()) {
                progress.at("Setting the PDF", 0);
                PdfReport.write(
                        new ReportPage(analysis, stills, charts, options, true).write(), in.resolve("report.pdf"));
                progress.at("Setting the PDF", 1);
            }
            folder.publish();
        }
    }

    private static Map<Integer, List<CastCharts.Chart>> charts(ClipAnalysis analysis, Path in) throws IOException {
        Map<Integer, List<CastCharts.Chart>> out = new TreeMap<>();
        Path folder = Files.createDirectory(in.resolve("charts"));
        if (!Lettering.works()) {
            return out;
        }
        for (CastAnalysis cast : analysis.casts()) {
            String name = "cast" + cast.stroke().number() + "-";
            List<CastCharts.Chart> drawn = new CastCharts(analysis, cast.stroke()).draw();
            for (CastCharts.Chart chart : drawn) {
                files(folder, name + chart.kind().id(), chart.wide(), chart.csv());
            }
            List<Gain> gains = cast.outlook().gains();
            if (!gains.isEmpty()) {
                String svg = new GainChart(gains).draw(ChartSize.WIDE, name + "gains");
                files(folder, name + "gains", svg, ChartCsv.gains(gains));
            }
            out.put(cast.stroke().number(), drawn);
        }
        return out;
    }

    private static void files(Path folder, String name, String svg, String csv) throws IOException {
        Files.writeString(folder.resolve(name + ".svg"), svg);
        Files.writeString(folder.resolve(name + ".csv"), csv);
    }

    /** Reads the clip once for the marked clip and the stills. */
    private static Map<Integer, Still> pictures(
            ClipAnalysis analysis, Path in, ReportOptions options, Progress progress) throws IOException {
        Files.createDirectory(in.resolve("frames"));
        FaceVeil veil = new FaceVeil(options.veiled());
        StillMaker stills = new StillMaker(analysis, options.reader());
        try (PictureReader reader =
                        Footage.open(analysis.clip(), analysis.info()).pictures();
                MarkedClip marked = new MarkedClip(analysis, in.resolve("marked.mp4"), options)) {
            while (reader.advance()) {
                int i = reader.index();
                progress.at("Drawing", (double) i / analysis.info().frames());
                if (!marked.wants(i) && !stills.wants(i)) {
                    continue;
                }
                VideoPlanes planes = veil.covers(i) ? null : reader.planes();
                if (planes == null || stills.wants(i)) {
                    Picture p = reader.picture();
                    veil.cover(p.image(), i);
                    if (stills.wants(i)) {
                        stills.add(p, in);
                    }
                    planes = planes == null ? p.planes() : planes;
                }
                marked.add(i, reader.seconds(), planes);
            }
        }
        progress.at("Drawing", 1);
        return stills.stills();
    }
}
