import java.util.List;
import org.apache.spark.SparkConf;
import org.apache.spark.api.java.JavaSparkContext;

/** Pipes each partition of a file of plans through a program: SparkPipe PLANS ANSWERS PARTITIONS PROGRAM. */
public final class SparkPipe {
    private SparkPipe() {}

    public static void main(String[] arguments) {
        int partitions = Integer.parseInt(arguments[2]);
        SparkConf configuration = new SparkConf()
                .setAppName("plans")
                .setMaster(System.getProperty("spark.master", "local[" + partitions + "]"))
                .set("spark.ui.enabled", "false")
                .set("spark.driver.host", "127.0.0.1");
        try (JavaSparkContext spark = new JavaSparkContext(configuration)) {
            spark.textFile(arguments[0], partitions).pipe(List.of(arguments[3])).saveAsTextFile(arguments[1]);
        }
    }
}
