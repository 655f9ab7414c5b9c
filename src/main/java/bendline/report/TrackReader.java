package bendline.report;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Reads the frames and the curves of an analysis, by cast. */
final class TrackReader {

    private static final CSVFormat FORMAT =
            CSVFormat.DEFAULT.builder().setHeader().setSkipHeaderRecord(true).get();

    private final Path folder;

    TrackReader(Path folder) {
        this.folder = folder;
    }

    Map<Integer, CastTrack> read() throws IOException {
        Map<Integer, List<CSVRecord>> rows = byCast(folder.resolve("frames.csv"));
        // Analyses made before curves were written have none; everything else of them can be used.
        Path file = folder.resolve("curves.csv");
        Map<Integer, List<CSVRecord>> curves = Files.exists(file) ? byCast(file) : Map.of();
        Map<Integer, CastTrack> out = new TreeMap<>();
        rows.forEach((cast, list) -> out.put(cast, track(list, curves.getOrDefault(cast, List.of()))));
        return out;
    }

    private static Map<Integer, List<CSVRecord>> byCast(Path file) throws IOException {
        Map<Integer, List<CSVRecord>> out = new TreeMap<>();
        try (BufferedReader in = Files.newBufferedReader(file);
                CSVParser parser = CSVParser.parse(in, FORMAT)) {
            for (CSVRecord r : parser) {
                if (!r.get("cast").isEmpty()) {
                    out.computeIfAbsent(Integer.parseInt(r.get("cast")), k -> new ArrayList<>())
                            .add(r);
                }
            }
        } catch (java.io.UncheckedIOException e) {
            throw e.getCause();
        }
        return out;
    }

    private static CastTrack track(List<CSVRecord> rows, List<CSVRecord> curves) {
        SortedMap<Integer, Polyline> lines = new TreeMap<>();
        for (CSVRecord r : curves) {
            List<Point> points = new ArrayList<>();
            for (int i = 0; i < CurvesCsv.POINTS; i++) {
                points.add(new Point(Double.parseDouble(r.get("x" + i)), Double.parseDouble(r.get("y" + i))));
            }
            lines.put(Integer.parseInt(r.get("frame")), new Polyline(points));
        }
        Function<String, double[]> column =
                name -> rows.stream().mapToDouble(r -> number(r.get(name))).toArray();
        return new CastTrack(
                rows.stream().mapToInt(r -> Integer.parseInt(r.get("frame"))).toArray(),
                column.apply("seconds"),
                column.apply("grip_x"),
                column.apply("grip_y"),
                column.apply("tip_x"),
                column.apply("tip_y"),
                column.apply("butt_angle_deg"),
                column.apply("chord_ratio"),
                column.apply("tip_speed_mps"),
                lines);
    }

    private static double number(String cell) {
        return cell.isEmpty() ? Double.NaN : Double.parseDouble(cell);
    }
}
