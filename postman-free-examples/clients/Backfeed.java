import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import org.openapitools.client.ApiClient;
import org.openapitools.client.ApiException;
import org.openapitools.client.api.BulkApi;
import org.openapitools.client.api.ConductorsApi;
import org.openapitools.client.api.ExamplesApi;
import org.openapitools.client.api.IgnitionApi;
import org.openapitools.client.api.PlansApi;
import org.openapitools.client.api.ServiceApi;
import org.openapitools.client.model.BulkOperation;
import org.openapitools.client.model.Plan;
import org.openapitools.client.model.SheetQuestion;
import org.openapitools.client.model.UnintendedFeed;
import org.openapitools.client.model.VoltageDropQuestion;

/**
 * Asks with the client made from the contract: what is live in a demo plan when it should be off, its picture and its
 * sheet, the contract, and many lines in one run, as lines of JSON and as rows of a table.
 */
public class Backfeed {
    public static void main(String[] args) throws ApiException, IOException {
        ApiClient client = new ApiClient();
        client.updateBaseUri(System.getenv("LOOMWRIGHT"));
        PlansApi plans = new PlansApi(client);
        Object example = new ExamplesApi(client).getExample("sandpiper-unguarded-bypass");
        Plan plan = client.getObjectMapper().convertValue(example, Plan.class);
        PlansApi.APIFindBackfeedRequest backfeed =
                PlansApi.APIFindBackfeedRequest.newBuilder().plan(plan).build();
        for (UnintendedFeed feed : plans.findBackfeed(backfeed).getResult().getUnintendedFeeds()) {
            System.out.println(feed.getSeverity() + ": " + feed.getVerdict().getText());
        }
        ConductorsApi conductors = new ConductorsApi(client);
        VoltageDropQuestion wire =
                new VoltageDropQuestion().size("14 AWG").lengthM(3.0).currentA(8.0);
        System.out.println("drop: " + conductors.postVoltageDrop(wire, null, null).getResult().getTotalV() + " V");
        // Parameters are set by name, however many an operation has.
        System.out.println("spark: " + new IgnitionApi(client)
                .getSpark(IgnitionApi.APIGetSparkRequest.newBuilder().speedRpm(3000.0).build())
                .getResult().getAt().getMarginKv() + " kV");

        String svg = plans.drawPlan(PlansApi.APIDrawPlanRequest.newBuilder().plan(plan).build())
                .getResult().getSvg();
        if (!svg.contains("<svg")) {
            throw new AssertionError("picture has no <svg");
        }
        System.out.println("picture: " + svg.length() + " characters");
        found("sheet", plans.printSheet(PlansApi.APIPrintSheetRequest.newBuilder()
                .sheetQuestion(new SheetQuestion().plan(plan)).build()), "<html");
        found("contract", new ServiceApi(client).getContract(), "openapi: 3.1");

        BulkApi bulk = new BulkApi(client);
        String lines = String.join("\n", List.of(
                client.getObjectMapper().writeValueAsString(wire),
                client.getObjectMapper().writeValueAsString(wire.lengthM(6.0))));
        BulkApi.APIRunBulkRequest run = BulkApi.APIRunBulkRequest.newBuilder()
                .operation(BulkOperation.VOLTAGE_DROP).body(lines).build();
        found("bulk", bulk.runBulk(run), "\"summary\"");
        ApiClient ofTables = new ApiClient();
        ofTables.updateBaseUri(System.getenv("LOOMWRIGHT"));
        ofTables.setRequestInterceptor(request -> request.setHeader("Accept", "text/csv"));
        found("csv", new BulkApi(ofTables).runBulk(run), "line,key,status,message");
        try {
            conductors.postVoltageDrop(wire.size("16"), null, null);
            throw new AssertionError("16 may be a gauge or an area");
        } catch (ApiException refused) {
            System.out.println("refused: " + refused.getCode());
        }
    }

    private static void found(String what, File file, String text) throws IOException {
        String content = Files.readString(file.toPath());
        if (!content.contains(text)) {
            throw new AssertionError(what + " has no " + text);
        }
        System.out.println(what + ": " + content.length() + " characters");
        Files.delete(file.toPath());
    }
}
